/** Pictures as dots, read from PGM, PPM and PNG files. */
import { inflateSync } from 'node:zlib';

/** `samples` holds `channels` bytes a dot, row by row. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly samples: Uint8Array;
}

export function readPgm(bytes: Buffer): Raster {
  return readNetpbm(bytes, 'P5', 1);
}

export function readPpm(bytes: Buffer): Raster {
  return readNetpbm(bytes, 'P6', 3);
}

function readNetpbm(bytes: Buffer, magic: string, channels: number): Raster {
  const header = /^(P[56])\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (header?.[1] !== magic) throw new Error(`not a ${magic} file`);
  const samples = bytes.subarray(header[0].length);
  return { width: Number(header[2]), height: Number(header[3]), channels, samples };
}

/** PNG (ISO/IEC 15948) of 8 bits a sample without interlacing. */
export function readPng(bytes: Buffer): Raster {
  const data: Buffer[] = [];
  let [width, height, channels] = [0, 0, 0];
  for (let i = 8; i < bytes.length; i += bytes.readUInt32BE(i) + 12) {
    const kind = bytes.toString('latin1', i + 4, i + 8);
    const chunk = bytes.subarray(i + 8, i + 8 + bytes.readUInt32BE(i));
    if (kind === 'IHDR') {
      [width, height] = [chunk.readUInt32BE(0), chunk.readUInt32BE(4)];
      channels = { 0: 1, 2: 3, 4: 2, 6: 4 }[chunk[9] ?? -1] ?? 0;
      if (chunk[8] !== 8 || channels === 0 || chunk[12] !== 0) throw new Error('not such a PNG');
    }
    if (kind === 'IDAT') data.push(chunk);
  }
  const raw = inflateSync(Buffer.concat(data));
  const stride = width * channels;
  const samples = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)] ?? 0;
    for (let x = 0; x < stride; x++) {
      const at = y * stride + x;
      const left = x < channels ? 0 : (samples[at - channels] ?? 0);
      const up = y === 0 ? 0 : (samples[at - stride] ?? 0);
      const corner = x < channels || y === 0 ? 0 : (samples[at - stride - channels] ?? 0);
      const guess = predicted(filter, left, up, corner);
      samples[at] = (raw[y * (stride + 1) + 1 + x] ?? 0) + guess;
    }
  }
  return { width, height, channels, samples };
}

/** What a filter of PNG expects of a sample from its neighbors. */
function predicted(filter: number, left: number, up: number, corner: number): number {
  switch (filter) {
    case 1:
      return left;
    case 2:
      return up;
    case 3:
      return (left + up) >> 1;
    case 4: {
      // The neighbor that is nearest to the sum of two less the third, in this order.
      const toLeft = Math.abs(up - corner);
      const toUp = Math.abs(left - corner);
      const toCorner = Math.abs(left + up - 2 * corner);
      if (toLeft <= toUp && toLeft <= toCorner) return left;
      return toUp <= toCorner ? up : corner;
    }
    default:
      return 0;
  }
}

/** The same picture with one channel: the first, or the mean of the colors. */
export function gray(raster: Raster): Raster {
  const { width, height, channels, samples } = raster;
  const light = new Uint8Array(width * height);
  for (let i = 0, at = 0; i < light.length; i++, at += channels) {
    const [r = 0, g = r, b = r] = [samples[at], samples[at + 1], samples[at + 2]];
    light[i] = channels < 3 ? r : (r + g + b) / 3;
  }
  return { width, height, channels: 1, samples: light };
}

/** Lightness of a dot, 0 to 255, of its first channel or of the mean of its colors. */
export function lightness({ width, height, channels, samples }: Raster, x: number, y: number) {
  if (x < 0 || y < 0 || x >= width || y >= height) return 255;
  const at = (y * width + x) * channels;
  if (channels < 3) return samples[at] ?? 255;
  return ((samples[at] ?? 0) + (samples[at + 1] ?? 0) + (samples[at + 2] ?? 0)) / 3;
}

/** Middles of the dark stretches along a row of dots, or along a column, weighed by darkness. */
export function darkMiddles(raster: Raster, along: 'row' | 'column', index: number): number[] {
  const middles: number[] = [];
  let [weight, moment] = [0, 0];
  const count = along === 'row' ? raster.width : raster.height;
  for (let i = 0; i <= count; i++) {
    const [x, y] = along === 'row' ? [i, index] : [index, i];
    const dark = i === count ? 0 : 255 - lightness(raster, x, y);
    if (dark > 8) {
      weight += dark;
      moment += dark * (i + 0.5);
    } else if (weight > 0) {
      middles.push(moment / weight);
      [weight, moment] = [0, 0];
    }
  }
  return middles;
}
