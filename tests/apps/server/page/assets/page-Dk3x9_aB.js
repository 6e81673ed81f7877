// Its name ends in a hash, as a bundler writes it: such a file never changes.
const paragraph = document.querySelector("p");
if (paragraph !== null) paragraph.textContent = "The script ran.";
