package oil

import "testing"

func TestReadService(t *testing.T) {
	for _, c := range []struct {
		text, want     string
		conserving, ok bool
	}{
		{"API SN PLUS/CF", "SN+ CF", false, true},
		{"sl, cf-4", "SL CF-4", false, true},
		{"SP-RC", "SP", true, true},
		{"SP RC", "SP", true, true},
		{"SN-RC/CF", "SN CF", true, true},
		{"SPRC", "", false, false},
		{"SM EC", "SM", true, true},
		{"none", "NONE", false, true},
		{"", "", false, true},
		{"API", "", false, true},
		// Left out of the order: no categories.
		{"SI", "", false, false},
		{"SK", "", false, false},
		{"SO", "", false, false},
		{"S", "", false, false},
		{"MA2/SL", "", false, false},
		{"gl-4/gl-5", "GL-4 GL-5", false, true},
		{"20W-50", "", false, false},
	} {
		got, conserving, ok := ReadService(c.text)
		if got != c.want || conserving != c.conserving || ok != c.ok {
			t.Errorf("%q read as %q, %v, %v", c.text, got, conserving, ok)
		}
	}
}

func TestReadMark(t *testing.T) {
	for text, want := range map[string]string{"": "", "MA2": "MA2", "JASO MA-2": "MA2", "jaso ma": "MA", "mb": "MB", "none": None, "FD": "FD"} {
		if got, ok := ReadMark(text); !ok || got != want {
			t.Errorf("%q read as %q, %v", text, got, ok)
		}
	}
	for _, text := range []string{"MA3", "MC", "FE", "JASO T903", "2", "F1", "F"} {
		if got, ok := ReadMark(text); ok {
			t.Errorf("%q read as %q", text, got)
		}
	}
}

func FuzzLabel(f *testing.F) {
	for _, seed := range []string{"API SN PLUS/CF", "SP-RC", "JASO MA2", "none", ",,/ ", "RC", "\xff", "SN+RC", "CRCRC", "CF-RC-RC"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if mark, ok := ReadMark(text); ok {
			if again, ok := ReadMark(mark); !ok || again != mark {
				t.Fatalf("mark %q gives %q, which gives %q", text, mark, again)
			}
		}
		if service, _, ok := ReadService(text); ok {
			if again, _, ok := ReadService(service); !ok || again != service {
				t.Fatalf("service %q gives %q, which gives %q", text, service, again)
			}
		}
	})
}
