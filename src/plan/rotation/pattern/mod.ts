/** The remainder from 0 to below `period`. `mod(-1, 10) === 9` */
export function mod(value: number, period: number): number {
  const rest = value % period;
  return rest < 0 ? rest + period : rest;
}
