/** SHA-256 of a file, as 64 hexadecimal digits; null: it could not be read. */
export async function sha256Of(file: Blob): Promise<string | null> {
  try {
    const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", await file.arrayBuffer()));
    return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  } catch {
    return null; // gone, or the card was pulled out
  }
}
