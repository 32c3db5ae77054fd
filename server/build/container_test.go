package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// imageBuilder is a program that builds images from a Containerfile and runs them.
type imageBuilder struct {
	name  string
	build []string // before the Containerfile and its folder
	run   []string // before the image or, if prepare is set, the container
	// prepare makes a container of the image, for a builder that runs no image.
	prepare []string
	program []string // before the program's arguments
}

var imageBuilders = []imageBuilder{
	{"docker", []string{"build", "-q", "-f"}, []string{"run", "--rm", "--read-only", "--cap-drop=ALL", "--network=host"}, nil, nil},
	{"podman", []string{"build", "-q", "-f"}, []string{"run", "--rm", "--read-only", "--cap-drop=ALL", "--network=host"}, nil, nil},
	{
		"buildah", []string{"build", "-q", "--isolation=chroot", "-f"}, []string{"run", "--isolation=chroot"},
		[]string{"from"}, []string{"--", "/tidysump"},
	},
}

// The image holds the program alone, which serves there as a user without rights.
func TestContainer(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("elsewhere containers run in another machine, whose ports are not this one's")
	}
	folder := filepath.Dir(built(t, "tidysump"))
	var reasons []string
	for _, b := range imageBuilders {
		if _, err := b.say("info"); err != nil {
			reasons = append(reasons, err.Error())
			continue
		}
		if err := b.serves(t, folder); err != nil {
			reasons = append(reasons, err.Error())
			continue
		}
		return
	}
	t.Skipf("no builder of images works here: %s", strings.Join(reasons, "; "))
}

// serves builds the image and holds what it serves against the archive. An error
// means that this builder runs nothing here.
func (b imageBuilder) serves(t *testing.T, folder string) error {
	image, err := b.say(append(b.build, "../Containerfile", folder)...)
	if err != nil {
		return err
	}
	defer b.say("rmi", "-f", image)
	if b.prepare != nil {
		if image, err = b.say(append(b.prepare, image)...); err != nil {
			return err
		}
		defer b.say("rm", image)
	}
	arguments := slices.Concat(b.run, []string{image}, b.program)
	if _, err := b.say(append(arguments, "-h")...); err != nil {
		return err
	}
	serves(t, exec.Command(b.name, append(arguments, "-addr", "127.0.0.1:0")...)) // how it ends is the builder's affair
	return nil
}

// say runs the builder and returns the last line that it says.
func (b imageBuilder) say(args ...string) (string, error) {
	var complaints bytes.Buffer
	c := exec.Command(b.name, args...)
	c.Stderr = &complaints
	out, err := c.Output()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w %s", b.name, args[0], err, lastLine(complaints.String()))
	}
	return lastLine(string(out)), nil
}

func lastLine(text string) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	return lines[len(lines)-1]
}
