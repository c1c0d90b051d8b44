// On a page whose answer is still being worked out: asks for the page again in a moment, until it is there.

setTimeout(() => location.reload(), 600);
