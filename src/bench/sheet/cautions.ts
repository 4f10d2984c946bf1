/** Shown wherever soldering or wiring is told. Common practice. */
export const CAUTIONS: readonly string[] = [
  "Unplug the guitar from the amplifier before anything else.",
  "Never open an amplifier: mains voltage and stored charge can kill, even unplugged. That is work for a licensed technician.",
  "The iron's tip is at 300 to 400 °C: keep it in its stand, and let joints and pot cases cool before touching them.",
  "Wear eye protection: flux and clipped wire ends fly, and so do strings and the claw's springs, which are under tension: slacken them first.",
  "Solder where there is moving air and keep your face out of the fumes.",
  "Solder may hold lead: do not eat or drink at the bench, and wash your hands afterwards.",
  "The spring claw takes a bigger iron and more time than any lug: cover the finish around it.",
  "Cover the guitar's finish, and keep children and animals away from the bench.",
  "Follow the rules that hold where you live for solder, waste and electrical work.",
  "First listen at low volume, and turn up slowly.",
];
