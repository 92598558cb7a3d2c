// Only in the folder for a web host: lets the device keep the page.
if (navigator.serviceWorker && isSecureContext) navigator.serviceWorker.register('sw.js');
