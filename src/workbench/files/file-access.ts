/** A workbook file that she chose. */
export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Present where the browser lets the page write the file again. */
  readonly handle?: FileSystemFileHandle;
}

/** Where a save went: into a file, to the downloads, or nowhere because she left the dialog. */
export type Saved =
  | { readonly kind: "file"; readonly name: string; readonly handle: FileSystemFileHandle }
  | { readonly kind: "download"; readonly name: string }
  | { readonly kind: "given-up" };

const WORKBOOK_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const PICKER_TYPES = [{ description: "Excel workbook", accept: { [WORKBOOK_TYPE]: [".xlsx", ".xlsm"] } }];

/** The dialogs of the File System Access API (not yet in TypeScript's own declarations). */
interface FilePickers {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}

const pickers = (): FilePickers => window as FilePickers;

/** Lets her choose a workbook. @returns undefined where she left the dialog */
export async function chooseFile(): Promise<ChosenFile | undefined> {
  const { showOpenFilePicker } = pickers();
  if (showOpenFilePicker === undefined) return chooseByInput();
  try {
    const [handle] = await showOpenFilePicker.call(window, { types: PICKER_TYPES });
    return handle === undefined ? undefined : await readHandle(handle);
  } catch (error) {
    if (isGivenUp(error)) return undefined;
    throw error;
  }
}

/** The workbook dropped on the page, if a file was. */
export async function readDropped(transfer: DataTransfer): Promise<ChosenFile | undefined> {
  const item = [...transfer.items].find(({ kind }) => kind === "file") as
    (DataTransferItem & { getAsFileSystemHandle?(): Promise<FileSystemHandle | null> }) | undefined;
  const file = item?.getAsFile() ?? undefined;
  const handle = await item?.getAsFileSystemHandle?.();
  if (handle instanceof FileSystemFileHandle) return readHandle(handle);
  return file === undefined ? undefined : readFile(file);
}

/** Writes into a file that was opened or saved before. @throws where the system refuses; the old file stays whole */
export async function writeFile(handle: FileSystemFileHandle, bytes: Uint8Array): Promise<Saved> {
  const writable = await handle.createWritable();
  await writable.write(bytes as Uint8Array<ArrayBuffer>);
  await writable.close();
  return { kind: "file", name: handle.name, handle };
}

/** Asks where to save and writes there; where the browser has no such dialog, downloads. */
export async function saveAs(name: string, bytes: Uint8Array): Promise<Saved> {
  const { showSaveFilePicker } = pickers();
  if (showSaveFilePicker === undefined) return download(name, bytes);
  try {
    const handle = await showSaveFilePicker.call(window, { suggestedName: name, types: PICKER_TYPES });
    return await writeFile(handle, bytes);
  } catch (error) {
    if (isGivenUp(error)) return { kind: "given-up" };
    throw error;
  }
}

function download(name: string, bytes: Uint8Array): Saved {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: WORKBOOK_TYPE }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 60_000);
  return { kind: "download", name };
}

function chooseByInput(): Promise<ChosenFile | undefined> {
  return new Promise((resolve, reject) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = ".xlsx,.xlsm";
    input.addEventListener("cancel", () => {
      resolve(undefined);
    });
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (file === undefined) resolve(undefined);
      else readFile(file).then(resolve, reject);
    });
    input.click();
  });
}

async function readHandle(handle: FileSystemFileHandle): Promise<ChosenFile> {
  return { ...(await readFile(await handle.getFile())), handle };
}

const readFile = async (file: File): Promise<ChosenFile> => ({
  name: file.name,
  bytes: new Uint8Array(await file.arrayBuffer()),
});

const isGivenUp = (error: unknown): boolean => error instanceof DOMException && error.name === "AbortError";
