// The device's own compass. What browsers tell: W3C's Device Orientation Event, and on iPhones
// `webkitCompassHeading`, which is asked for leave first.

export const hasCompass = () => 'DeviceOrientationEvent' in globalThis && matchMedia('(pointer: coarse)').matches;

const flat = 30; // degrees that the device may tip: beyond it, what is up on the screen has no one heading

// Where the top of the screen points, degrees clockwise from north; undefined while the device is
// tipped up or tells no heading. `angle` is how far the screen's picture is turned on the device.
interface Turned {
  alpha: number | null;
  beta: number | null;
  gamma: number | null;
  absolute: boolean;
  webkitCompassHeading?: number;
}
export function headingOf({ alpha, beta, gamma, absolute, webkitCompassHeading }: Turned, angle: number): number | undefined {
  const device = webkitCompassHeading ?? (absolute && alpha !== null ? 360 - alpha : undefined);
  if (device === undefined || Math.abs(beta ?? 0) > flat || Math.abs(gamma ?? 0) > flat) return undefined;
  return (((device + angle) % 360) + 360) % 360;
}

const winds = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'];
export const windOf = (heading: number) => winds[Math.round(heading / 45) % winds.length];

// The first heading that the device tells while it lies flat. Refused with words for the person.
export async function readHeading(patience = 20000): Promise<number> {
  const event: typeof DeviceOrientationEvent & { requestPermission?(): Promise<string> } = DeviceOrientationEvent;
  if (event.requestPermission && (await event.requestPermission()) !== 'granted') {
    throw new Error('The phone did not let the page read its compass.');
  }
  const names = ['deviceorientationabsolute', 'deviceorientation'] as const;
  let told = false;
  return new Promise((resolve, reject) => {
    const end = () => {
      clearTimeout(timer);
      for (const name of names) removeEventListener(name, take);
    };
    const take = (turn: DeviceOrientationEvent & { webkitCompassHeading?: number }) => {
      told ||= turn.absolute || turn.webkitCompassHeading !== undefined;
      const heading = headingOf(turn, screen.orientation?.angle ?? 0);
      if (heading === undefined) return;
      end();
      resolve(heading);
    };
    const timer = setTimeout(() => {
      end();
      reject(new Error(told ? 'Hold the phone flat, screen up, and try again.' : 'This device tells no compass heading: turn the compass by hand.'));
    }, patience);
    for (const name of names) addEventListener(name, take);
  });
}
