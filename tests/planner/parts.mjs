// The page's own modules by their names, put together as they are for the page: those tested here need
// neither engine nor browser.
import { bundled } from '../../src/planner/page/bundle.mjs';

const names = ['alarms', 'compass', 'geometry', 'job', 'panel_mix', 'reshape', 'toml', 'units'];
const text = await bundled({ contents: names.map((name) => `export * as ${name} from './${name}';`).join('\n') }, { format: 'esm' });

export default await import(`data:text/javascript;base64,${Buffer.from(text).toString('base64')}`);
