// What a page must not do while it is tested: write an error, throw, or ask another host.
import type { BrowserContext, Request } from 'playwright-core';

export class Faults {
  private readonly found: string[] = [];
  private readonly allowed: RegExp[] = [];

  /** @param home every request must begin with one of these. */
  constructor(context: BrowserContext, private readonly home: string[]) {
    context.on('console', (message) => {
      if (message.type() !== 'error' && message.type() !== 'assert') return;
      this.found.push(`console: ${message.text()} (${message.location().url})`);
    });
    context.on('weberror', (error) => this.found.push(`thrown: ${error.error()}`));
    context.on('request', (request) => this.checkHost(request));
    context.on('requestfailed', (request) => {
      this.found.push(`not loaded: ${request.url()} (${request.failure()?.errorText})`);
    });
  }

  /** What a test does on purpose is no fault. Give a reason beside it. */
  allow(pattern: RegExp): void {
    this.allowed.push(pattern);
  }

  /** Everything found and not allowed. */
  list(): string[] {
    return this.found.filter((fault) => !this.allowed.some((pattern) => pattern.test(fault)));
  }

  private checkHost(request: Request): void {
    const own = [...this.home, 'data:', 'blob:', 'about:'];
    if (own.some((start) => request.url().startsWith(start))) return;
    this.found.push(`asked elsewhere: ${request.method()} ${request.url()}`);
  }
}
