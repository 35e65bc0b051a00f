/** Does it after the next drawing; at once where nothing is drawn, as in a tab that is not seen. */
export function onceDrawn(act: () => void) {
  if (window.document.visibilityState === "hidden") act()
  else requestAnimationFrame(() => setTimeout(act))
}
