/** Files that the page fetches by the address the bundler gives them. */
declare module '*?url' {
  const url: string
  export { url as default }
}
