export function sqlTo(input: { url: string; schema: string; migrations?: string }): Promise<string>;
