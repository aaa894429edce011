/** Where the ear's network lies; null: the app was built without it. Answered by the build (`vite.config.ts`). */
declare module 'virtual:ear-weights' {
  const url: string | null;
  export default url;
}
