export function setUp(options?: { dev?: boolean; print?: (line: string) => void }): Promise<void>;
