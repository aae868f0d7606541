const KEY = 'tallyround.scan-sound';

/** Off until somebody asks for it: the room may be quiet, and the person frightened. */
export const soundWanted = (): boolean => localStorage.getItem(KEY) === 'on';
export const wantSound = (on: boolean): void => {
  localStorage.setItem(KEY, on ? 'on' : 'off');
};

/** One short, soft tone. */
export function playRead(): void {
  const audio = new AudioContext();
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.frequency.value = 660;
  volume.gain.value = 0.08;
  tone.connect(volume).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + 0.12);
  tone.onended = () => void audio.close();
}
