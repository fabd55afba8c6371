export * from '@runback/drawing/pdf';
