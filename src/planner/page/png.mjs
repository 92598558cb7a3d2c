// A part of a PNG file (ISO/IEC 15948) with its length and check sum.
function crc(bytes) {
  let value = ~0;
  for (const byte of bytes) {
    value ^= byte;
    for (let k = 0; k < 8; ++k) value = (value >>> 1) ^ (0xedb88320 & -(value & 1));
  }
  return ~value >>> 0;
}
export function chunk(kind, data) {
  const body = Buffer.concat([Buffer.from(kind), data]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.writeUInt32BE(crc(body), 4);
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
}
