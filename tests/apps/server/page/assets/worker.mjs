// In the folder of hashed files, but with no hash in its name.
self.onmessage = (message) => self.postMessage(message.data);
