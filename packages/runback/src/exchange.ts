export * from '@runback/exchange';
