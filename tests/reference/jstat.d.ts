/** What the tests use of jstat, which brings no types. */
declare module 'jstat' {
  const jstat: { readonly studentt: { readonly inv: (share: number, freedom: number) => number } }
  export default jstat
}
