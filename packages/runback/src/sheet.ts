export * from '@runback/drawing';
