/** Whether somebody has gone from one page to another since the app was opened. */
let moved = false;
window.addEventListener('hashchange', () => {
  moved = true;
});

export const hasMoved = (): boolean => moved;
