/**
 * Solves A x = b in place by Gaussian elimination with partial pivoting. A is row by row.
 * Throws RangeError when A is singular to working precision.
 */
export function solveLinear(matrix: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  for (let k = 0; k < n; k++) {
    pivot(matrix, right, k);
    const top = matrix[k * n + k] as number;
    if (top === 0) throw new RangeError('The equations have no single solution');
    for (let i = k + 1; i < n; i++) {
      const factor = (matrix[i * n + k] as number) / top;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) {
        matrix[i * n + j] = (matrix[i * n + j] as number) - factor * (matrix[k * n + j] as number);
      }
      right[i] = (right[i] as number) - factor * (right[k] as number);
    }
  }
  return backSubstitute(matrix, right);
}

function pivot(matrix: Float64Array, right: Float64Array, k: number): void {
  const n = right.length;
  let best = k;
  for (let i = k + 1; i < n; i++) {
    if (Math.abs(matrix[i * n + k] as number) > Math.abs(matrix[best * n + k] as number)) best = i;
  }
  if (best === k) return;
  for (let j = k; j < n; j++) swap(matrix, k * n + j, best * n + j);
  swap(right, k, best);
}

function swap(values: Float64Array, i: number, j: number): void {
  const held = values[i] as number;
  values[i] = values[j] as number;
  values[j] = held;
}

function backSubstitute(matrix: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i] as number;
    for (let j = i + 1; j < n; j++) sum -= (matrix[i * n + j] as number) * (right[j] as number);
    right[i] = sum / (matrix[i * n + i] as number);
  }
  return right;
}
