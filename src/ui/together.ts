const NUMBER_AND_UNIT =
  /(\d|×) (?=(?:mm|cm|m|in|ft|kg|lb|g|s|min|°C|°F|K|%|Pa|bar|N|mm²|cm³|in³|m\/s|°\/s|times)(?![\p{L}\d]))/gu;

/** A number and its unit stay on one line. */
export const together = (text: string): string => text.replace(NUMBER_AND_UNIT, '$1\u00a0');
