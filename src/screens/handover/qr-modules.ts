/** Makes the modules of a QR code that opens homework: the address as it is, its letters packed more tightly than bytes. */
import qrcode from 'qrcode-generator';

/** Versions above this are too fine for an older phone's camera at arm's length (common practice, no source). */
const LARGEST_VERSION = 25;
/** Level M: readable with up to 15 % of it spoiled (ISO/IEC 18004, M). */
const LEVEL = 'M';

export interface Modules {
  /** [row][column]; true is dark. */
  readonly dark: readonly (readonly boolean[])[];
  readonly version: number;
}

/** @param code letters A-Z and digits. Null: too much for a code. */
export function modulesOf(address: string, code: string): Modules | null {
  const qr = qrcode(0, LEVEL);
  qr.addData(address, 'Byte');
  qr.addData(code, 'Alphanumeric');
  if (!fits(qr)) return null;
  const size = qr.getModuleCount();
  const version = (size - 17) / 4;
  if (version > LARGEST_VERSION) return null;
  const along = Array.from({ length: size }, (_, n) => n);
  return { version, dark: along.map((row) => along.map((column) => qr.isDark(row, column))) };
}

/** Its maker throws on what no code can hold. */
function fits(qr: ReturnType<typeof qrcode>): boolean {
  try {
    qr.make();
    return true;
  } catch {
    return false;
  }
}
