// Told to whoever listens to the page.
export function say(text: string) {
  const place = document.getElementById('said');
  if (!place) return;
  place.textContent = '';
  place.textContent = text;
}
