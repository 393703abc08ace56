export * from './inspect.ts'
