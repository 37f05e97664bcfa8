// What holds for every page on paper: it is white whatever the theme of the screen, and a caution
// shows its text, for nobody can open it there.

/** Starts to listen for printing; before any page does, so that they find the light theme set. */
export function start() {
  const page = document.documentElement;
  let undo = [];

  window.addEventListener('beforeprint', () => {
    const { theme } = page.dataset;
    page.dataset.theme = 'light';
    undo.push(() => {
      if (theme === undefined) {
        delete page.dataset.theme;
      } else {
        page.dataset.theme = theme;
      }
    });
    for (const caution of document.querySelectorAll('details.caution:not([open])')) {
      caution.open = true;
      undo.push(() => {
        caution.open = false;
      });
    }
  });
  window.addEventListener('afterprint', () => {
    undo.forEach((one) => one());
    undo = [];
  });
}
