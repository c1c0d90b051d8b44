// Random orders that come out the same wherever they are made.

// Xorshift with 32 bits of state (Marsaglia 2003, Journal of Statistical Software 8, 14); never 0.
function numbers(seed) {
  let state = seed === 0 ? 1 : seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

// FNV-1a, 32 bits.
function hash(text) {
  let value = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193);
  return value >>> 0;
}

/** The things in an order that depends on nothing but the text; every order is equally likely (Fisher and Yates). */
export function shuffled(things, text) {
  const random = numbers(hash(text));
  const order = [...things];
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}
