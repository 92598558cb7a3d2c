// The device's own compass. What browsers tell: W3C's Device Orientation Event, and on iPhones
// `webkitCompassHeading`, which is asked for leave first.

export const hasCompass = () => 'DeviceOrientationEvent' in globalThis && matchMedia('(pointer: coarse)').matches;

const flat = 30; // degrees that the device may tip: beyond it, what is up on the screen has no one heading

// Where the top of the screen points, degrees clockwise from north; undefined while the device is
// tipped up or tells no heading. `angle` is how far the screen's picture is turned on the device.
export function headingOf({ alpha, beta, gamma, absolute, webkitCompassHeading }, angle) {
  const device = webkitCompassHeading ?? (absolute && alpha !== null ? 360 - alpha : undefined);
  if (device === undefined || Math.abs(beta) > flat || Math.abs(gamma) > flat) return undefined;
  return (((device + angle) % 360) + 360) % 360;
}

const winds = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'];
export const windOf = (heading) => winds[Math.round(heading / 45) % winds.length];

// The first heading that the device tells while it lies flat. Refused with words for the person.
export async function readHeading(patience = 20000) {
  const { requestPermission } = globalThis.DeviceOrientationEvent;
  if (requestPermission && (await requestPermission.call(globalThis.DeviceOrientationEvent)) !== 'granted') {
    throw new Error('The phone did not let the page read its compass.');
  }
  const names = ['deviceorientationabsolute', 'deviceorientation'];
  let told = false;
  return new Promise((resolve, reject) => {
    const end = (done, value) => {
      clearTimeout(timer);
      for (const name of names) removeEventListener(name, take);
      done(value);
    };
    const take = (event) => {
      told ||= event.absolute || event.webkitCompassHeading !== undefined;
      const heading = headingOf(event, screen.orientation?.angle ?? 0);
      if (heading !== undefined) end(resolve, heading);
    };
    const timer = setTimeout(() => end(reject, new Error(told ? 'Hold the phone flat, screen up, and try again.' : 'This device tells no compass heading: turn the compass by hand.')), patience);
    for (const name of names) addEventListener(name, take);
  });
}
