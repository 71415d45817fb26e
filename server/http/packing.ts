/** Answers are sent packed to whoever takes them packed (RFC 9110 §12.5.3): a year's calendar shrinks to a tenth. */
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import compress from "@fastify/compress";
import type { FastifyInstance } from "fastify";

export type Packing = "br" | "gzip";

/** The best of what the caller takes; what is not named, or named with a weight of nothing, is not taken. */
export function packingFor(acceptEncoding: string | string[] | undefined): Packing | null {
  const taken = new Set(String(acceptEncoding ?? "").toLowerCase().split(",").map((one) => one.trim()).filter((one) => !/;\s*q=0(?:\.0*)?$/.test(one)).map((one) => one.split(";")[0]?.trim()));
  return taken.has("br") ? "br" : taken.has("gzip") || taken.has("*") ? "gzip" : null;
}

/** Above this, each further step costs several times the time for a few per cent less. */
const BROTLI_QUALITY = 5;
const GZIP_LEVEL = 6;
const smallBrotli = promisify(brotliCompress);
const smallGzip = promisify(gzip);

/** Off the thread that answers. */
export function pack(text: Buffer, packing: Packing): Promise<Buffer> {
  if (packing === "gzip") return smallGzip(text, { level: GZIP_LEVEL });
  return smallBrotli(text, { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY, [constants.BROTLI_PARAM_SIZE_HINT]: text.byteLength } });
}

/** Packs every other answer as it goes out; what a route has packed itself, or what lies packed beside its file, is left as it is. */
export async function packAnswers(app: FastifyInstance): Promise<void> {
  await app.register(compress, {
    globalDecompression: false,
    encodings: ["br", "gzip"],
    brotliOptions: { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY } },
    zlibOptions: { level: GZIP_LEVEL },
  });
}
