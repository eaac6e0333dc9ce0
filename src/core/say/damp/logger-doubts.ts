/** The option that settles what a file left open. */
export const DOUBT_OPTIONS: Readonly<Record<string, string>> = {
  "logger-date-order": "--date-order dmy, mdy or ymd",
  "logger-date-order-steps": "--date-order dmy, mdy or ymd",
  "logger-dates-mixed": "--date-order dmy, mdy or ymd",
  "logger-unit-temperature": "--unit C or --unit F",
  "logger-unit-humidity": "--unit % or --unit fraction",
  "logger-numbers-mixed": "--decimal , or --decimal .",
  "logger-several-sensors": "--sensor and its name",
  "logger-several-times": "--column time= and its heading",
  "logger-no-headings": "--column temperature= and humidity= with their numbers, 0 being the first",
  "logger-no-values": "--column temperature= and humidity= with their headings or numbers, 0 being the first",
  "logger-no-readings": "--column time= with its heading, or --date-order",
  "logger-no-date": "--column date= with its heading",
  "logger-zones-in-cells": "--offset +02:00",
  "logger-summer-time": "--summer-time out, or none if the clock kept one time all year",
};
export const sayDoubtOption = (option: string): string => `Settle it with ${option}.`;
