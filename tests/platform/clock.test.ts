import { expect, it } from 'vitest';
import { shiftedClock, systemClock } from '../../src/platform/clock.js';

it('The system’s clock shows the system’s time', () => {
  const before = Date.now();
  const shown = systemClock.now().getTime();
  expect(shown).toBeGreaterThanOrEqual(before);
  expect(shown).toBeLessThanOrEqual(Date.now());
});

it('A shifted clock keeps its distance and runs as fast', async () => {
  const day = 86_400_000;
  const clock = shiftedClock(day);
  const distance = () => clock.now().getTime() - Date.now();
  expect(Math.abs(distance() - day)).toBeLessThan(50);
  await new Promise((resolve) => setTimeout(resolve, 30));
  expect(Math.abs(distance() - day)).toBeLessThan(50);
});
