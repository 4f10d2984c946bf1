/** Does something once a context has played on for some seconds, however slowly or quickly its time goes. */
export function afterPlaying(context: BaseAudioContext, seconds: number, action: () => void): void {
  const silence = new ConstantSourceNode(context, { offset: 0 });
  silence.onended = () => {
    silence.disconnect();
    action();
  };
  // A source that is connected to nothing never ends.
  silence.connect(context.destination);
  silence.start();
  silence.stop(context.currentTime + seconds);
}
