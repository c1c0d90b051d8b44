// Ids made on the device: UUID version 7 (RFC 9562, 5.7), later ones sort later. crypto.getRandomValues also exists
// where crypto.randomUUID does not: over plain HTTP on a house network.

let lastMillis = 0;

/**
 * A UUIDv7 that sorts after every earlier one made in this tab and after `after` (another id), even when the clock was
 * set back.
 */
export function uuidv7(after = "", now = Date.now()) {
  const floor = /^[0-9a-f]{8}-[0-9a-f]{4}-7/.test(after) ? millisOf(after) : 0;
  lastMillis = Math.max(now, lastMillis + 1, floor + 1);
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  let millis = lastMillis;
  for (let i = 5; i >= 0; i--) {
    bytes[i] = millis % 256;
    millis = Math.floor(millis / 256);
  }
  bytes[6] = (bytes[6] & 0x0f) | 0x70;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

/** The instant in a UUIDv7, epoch milliseconds. */
export function millisOf(id) {
  return parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
}

/** Now as ISO-8601 with this device's offset, to the second. */
export function isoNow(date = new Date()) {
  const two = (n) => String(Math.trunc(Math.abs(n))).padStart(2, "0");
  const offset = -date.getTimezoneOffset();
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:`
    + `${two(date.getMinutes())}:${two(date.getSeconds())}${offset < 0 ? "-" : "+"}${two(offset / 60)}:${two(offset % 60)}`;
}
