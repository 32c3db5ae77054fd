// Loads the page again when another version is served; only the sites that the program
// watch builds have it.
const { content: shown } = document.querySelector('meta[name="version"]');
new EventSource(`/watch?shown=${shown}`).onmessage = () => location.reload();
