/** Opens the system's file dialog from a key or a menu, where no file button stands. */
export function chooseFiles(onFiles: (files: File[]) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.onchange = () => onFiles(Array.from(input.files ?? []));
  input.click();
}
