// How the page looks: as the device wants it, or black on white for bright sunlight. Kept where the
// browser lets a page keep anything.
const key = 'slabtide-look';

export const lookNow = () => document.documentElement.dataset.look ?? '';

export function takeLook(look: string) {
  if (look) document.documentElement.dataset.look = look;
  else delete document.documentElement.dataset.look;
  try {
    localStorage.setItem(key, look);
  } catch {
    // A private window forgets it.
  }
}

export function startLook() {
  try {
    takeLook(localStorage.getItem(key) === 'sunlight' ? 'sunlight' : '');
  } catch {
    // As the device wants it.
  }
}
