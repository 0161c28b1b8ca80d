/** Opens the system's file dialog from a key or a menu, where no file button stands. */
export function chooseFiles(onFiles: (files: File[]) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.hidden = true;
  input.onchange = () => {
    input.remove();
    onFiles(Array.from(input.files ?? []));
  };
  input.oncancel = () => input.remove();
  // In the page, so that it hears of the choice as it does of a file button's.
  document.body.append(input);
  input.click();
}
