/** What to print beside a result that touches something dangerous. Each begins with what the figure is not. */
const learning = 'For learning, never a design approval. ';

export const cautions = {
  general: `${learning}Follow the maker’s instructions and local rules; if anything looks wrong, stop, switch off if it is safe to do so, and ask a competent person.`,
  plug: `${learning}Unplug before opening a plug or changing its fuse. Follow the maker’s rating and local codes; if you are unsure, leave it to a competent electrician, licensed or registered as local codes require.`,
  rescue: `${learning}Never touch anyone who may still be in contact with a live supply. Switch off if you can do so safely; if you cannot, keep back, keep others back and call the emergency number.`,
  battery: `${learning}A battery cannot be switched off. Cover the terminals, take off metal jewellery, wear eye protection, and fit the fuse the maker specifies, close to the battery.`,
  hv: `${learning}Capacitors can hold a lethal charge after the plug is out. Opening high-voltage equipment is for a trained, competent person only; follow local codes and the maker’s instructions.`,
  height: `${learning}Work at height kills. Follow the ladder maker’s instructions and local rules, never work alone, and use a competent contractor for anything beyond a short, light task.`,
  line: `${learning}Treat every overhead line as live and bare. Ask the network operator before any work near one. A classroom distance is never permission.`,
  lightning: `${learning}If you can hear thunder, stop and go indoors or into a hard-topped vehicle. Do not touch feeders or antennas.`,
  rf: `${learning}Free-space arithmetic is a first check, not proof of compliance, and it fails close to an antenna. Use your regulator’s assessment method, and stop transmitting before anyone goes near the antenna.`,
  noise: `${learning}Keep the level as low as you can follow. Ringing or dulled hearing after operating means it was too loud; see a health professional about any change that lasts.`,
  mains: `${learning}Follow local codes. Fixed wiring, sockets, switchgear and supply earthing are for a competent electrician, licensed or registered as local codes require; a radio licence is not an electrical qualification.`,
  earth: `${learning}Follow local codes. Adding, changing or linking any earth on a mains-connected station must be designed and checked by a competent electrician, licensed or registered as local codes require, who knows that supply.`,
  lithium: `${learning}Use only the charger the battery maker names. If a lithium battery swells, hisses, smokes or gets hot, get everyone out and away, stay out and call the fire service.`,
  solder: `${learning}The iron burns and the fume can cause asthma. Use a stand, eye protection and fume extraction, wash your hands before eating, and follow the maker’s instructions. Never solder a live circuit.`,
  burn: `${learning}Cool a burn at once under cool running water for 20 minutes, and get medical help for any burn that blisters, is large or is on the face or hands, and for every burn of a child.`,
  lifting: `${learning}Guideline weights are not safe limits for everyone. Use a trolley or a second person, keep the load close, and stop if it hurts.`,
  generator: `${learning}Run generators outdoors only, well away from doors, windows and tents; refuel switched off and cold. Earthing a generator, or joining one to a building, is for a competent electrician, licensed or registered as local codes require.`,
} as const;

export type CautionKey = keyof typeof cautions;
