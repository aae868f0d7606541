import { useEffect, useState } from 'preact/hooks';

export interface Voice {
  /** Undefined where this browser cannot speak at all. */
  readonly say: ((text: string) => void) | undefined;
  readonly stop: () => void;
  readonly speaking: boolean;
  /** No voice of this language is on the tablet; another one would misread it. */
  readonly missing: boolean;
}

/** The browser's own speech, which needs no network where the tablet has a voice of its own. */
export function useVoice(language: string): Voice {
  const speech = 'speechSynthesis' in globalThis ? globalThis.speechSynthesis : undefined;
  const [speaking, setSpeaking] = useState(false);
  const [voices, setVoices] = useState(() => speech?.getVoices() ?? []);
  useEffect(() => {
    const look = (): void => setVoices(speech?.getVoices() ?? []);
    speech?.addEventListener('voiceschanged', look);
    return () => {
      speech?.removeEventListener('voiceschanged', look);
      speech?.cancel();
    };
  }, [speech]);
  const short = language.split('-')[0] ?? language;
  const voice = voices.find(({ lang }) => lang.toLowerCase().startsWith(short));
  return {
    say:
      speech === undefined
        ? undefined
        : (text) => {
            speech.cancel();
            const said = new SpeechSynthesisUtterance(text);
            said.lang = language;
            if (voice !== undefined) said.voice = voice;
            said.rate = 0.85;
            said.onend = () => setSpeaking(false);
            said.onerror = () => setSpeaking(false);
            setSpeaking(true);
            speech.speak(said);
          },
    stop: () => {
      speech?.cancel();
      setSpeaking(false);
    },
    speaking,
    missing: voice === undefined,
  };
}
