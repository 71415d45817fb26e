/** Ids are made by the page, so that sending an entry twice stores it once. `randomUUID` exists only where the page came over HTTPS or loopback. */
export function newId(): string {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  return uuidOf(crypto.getRandomValues(new Uint8Array(16)));
}

/** Sixteen random octets as a version 4 UUID (RFC 9562, section 5.4). */
export function uuidOf(octets: Uint8Array): string {
  const hex = Array.from(octets, (octet, i) => {
    const marked = i === 6 ? (octet & 0x0f) | 0x40 : i === 8 ? (octet & 0x3f) | 0x80 : octet;
    return marked.toString(16).padStart(2, "0");
  }).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
