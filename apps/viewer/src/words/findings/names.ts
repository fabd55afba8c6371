/** What the checks are called for people. */

const NAMES: Readonly<Record<string, string>> = {
  'corner-fit': 'Room for the bend',
  straights: 'Straights',
  die: 'Die and dial',
  slope: 'Fall',
  clearance: 'Clearance',
  'self-clearance': 'Clear of itself',
  'line-to-line': 'Clear of other lines',
  clips: 'Clips',
  'rigid-ends': 'Rigid ends',
  wall: 'Wall of the bend',
  nuts: 'Nuts and sleeves',
  flare: 'Flares',
  'port-direction': 'Direction at the port',
  stock: 'Length of stock',
  pockets: 'Liquid that stays',
  air: 'Air that stays',
  passage: 'Way of the stick',
  stick: 'Stick',
  'pull-out': 'Room to pull the stick out',
  'run-joint': 'Joints of the run',
  pressure: 'Pressure',
  thermal: 'Heat',
};

/** A check that is new here goes by its own id. */
export const checkName = (check: string): string => NAMES[check] ?? check;

export const CHECKS_NAMED: readonly string[] = Object.keys(NAMES);
