/** Hands a file to the handler: by the share sheet where the device has one, else as a download. From a tap. */

/** Some browsers begin to read only after the click is over; by then the address must still stand, ms. */
const RELEASE_MS = 60_000;

/** Spreadsheets read UTF-8 only behind a byte order mark. */
export const BYTE_ORDER_MARK = '\uFEFF';

export interface FileToSave {
  readonly name: string;
  readonly content: BlobPart;
  /** MIME: `application/json`. */
  readonly type: string;
}

/** @param after calls once, later. */
export async function saveFile(
  { name, content, type }: FileToSave,
  after: (ms: number, work: () => void) => unknown,
): Promise<'shared' | 'downloaded' | 'called-off'> {
  const file = new File([content], name, { type });
  const data = { files: [file], title: name };
  // Home-screen apps of some phones download nothing; a desktop's sheet only stands in the way.
  if (isPhone() && navigator.canShare?.(data)) {
    try {
      await navigator.share(data);
      return 'shared';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'called-off';
    }
  }
  after(RELEASE_MS, download(file));
  return 'downloaded';
}

const isPhone = (): boolean => matchMedia('(pointer: coarse)').matches;

/** Returns the way to let go of the file. */
function download(file: File): () => void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  return () => URL.revokeObjectURL(url);
}
