/** Shown wherever soldering or wiring is told. Common practice. */
export const CAUTIONS: readonly string[] = [
  "Unplug the guitar from the amplifier before anything else.",
  "Never open an amplifier: mains voltage and stored charge can kill, even unplugged. That is work for a licensed technician.",
  "The iron's tip is at 300 to 400 °C: keep it in its stand, and let joints and pot cases cool before touching them.",
  "Wear eye protection: flux and clipped wire ends fly.",
  "Strings and the claw's springs are under tension and can put out an eye: slacken them before anything is opened.",
  "Cover the guitar's finish, most of all around the spring claw, which takes a bigger iron and more time than any lug.",
  "File and roughen far from any pickup: filings cling to its magnets for ever and short its coil.",
  "Leave a pickup's cover on, or lay tape over an open coil: its magnet snatches a screwdriver, and a tip that jumps tears the wire.",
  "Solder where there is moving air and keep your face out of the fumes.",
  "Solder may hold lead: do not eat or drink at the bench, and wash your hands afterwards.",
  "Keep children and animals away from the bench.",
  "Follow the rules that hold where you live for solder, waste and electrical work.",
  "First listen at low volume, and turn up slowly.",
];
