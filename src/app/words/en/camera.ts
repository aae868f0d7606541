export function cameraWords() {
  return {
    picture: 'What the camera sees',
    opening: 'The camera opens. Say yes if the tablet asks.',
    loading: 'The reader is loading. It is kept for next time.',
    seen: {
      looking: 'Hold one label flat inside the frame.',
      slow: 'Still nothing. Smooth the label lengthways, or take another kit.',
      code: 'Read.',
      repeat: 'Read. Take it away before you read another.',
      two: 'Two codes are in the frame. Cover one, or go nearer.',
      half: 'Only part of the code can be read. Go back a little, and smooth the label.',
      product: "This is the product's code. Look for the kit's own label.",
    },
    light: {
      glare: 'Still nothing. If the label shines, tilt it. Or smooth it lengthways.',
      dark: 'It is dark. Use more light.',
    },
    faults: {
      'not-allowed':
        'The tablet may not use its camera. Allow it in the settings, or type the code.',
      'no-camera': 'This device has no camera. Use a scanner, or type the code.',
      'in-use': 'Something else uses the camera. Close it and try again.',
      'not-secure': 'The camera works only at a safe address. Use a scanner, or type the code.',
      failed: 'The camera did not open. Try again, or type the code.',
      reader: 'The reader did not start. Try again, or type the code.',
    },
    read: 'Read:',
    torchOn: 'Light on',
    torchOff: 'Light off',
    soundOn: 'Sound when read',
    soundOff: 'No sound',
    close: 'Close the camera',
  };
}
