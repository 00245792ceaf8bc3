package fettle.table;

import fettle.refusal.InputRefusedException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;

/**
 * Dates and times of ISO 8601, extended format only: nobody has to guess which number is the day.
 */
final class DateText {
  private static final int DATE_LENGTH = 10;
  private static final int FIRST_YEAR = 1900;
  private static final int LAST_YEAR = 2199;
  private static final String DAY = "a date written yyyy-mm-dd, such as 2026-03-31";
  private static final String MOMENT =
      "a date and time written yyyy-mm-ddThh:mm, such as 2026-03-31T14:05";

  private DateText() {}

  static LocalDate date(Cell cell) {
    String text = cell.raw();
    if (!hasIsoShape(text) || text.length() != DATE_LENGTH) {
      throw notIso(cell, DAY);
    }
    return day(cell, DAY);
  }

  static LocalDateTime dateTime(Cell cell) {
    String text = cell.raw();
    if (!hasIsoShape(text)) {
      throw notIso(cell, MOMENT);
    }
    LocalDate day = day(cell, MOMENT);
    if (text.length() == DATE_LENGTH) {
      throw cell.refusal(
          cell.quoted() + " has no time of day.", MOMENT, "add the time, or leave the cell empty");
    }
    char between = text.charAt(DATE_LENGTH);
    if (between != 'T' && between != 't' && between != ' ') {
      throw notIso(cell, MOMENT);
    }
    return LocalDateTime.of(day, time(cell, text.substring(DATE_LENGTH + 1)));
  }

  private static LocalTime time(Cell cell, String text) {
    int end = 0;
    while (end < text.length() && ":.,0123456789".indexOf(text.charAt(end)) >= 0) {
      end++;
    }
    String offset = text.substring(end).strip();
    try {
      if (!offset.isEmpty()) {
        ZoneOffset.of(offset.equals("z") ? "Z" : offset);
      }
      return LocalTime.parse(DecimalParser.withPoint(text.substring(0, end)));
    } catch (DateTimeException notTime) {
      throw cell.refusal(
          cell.quoted() + " has no valid time of day.",
          MOMENT + "; seconds and an offset such as +01:00 may follow",
          "write hours and minutes with two digits each");
    }
  }

  private static LocalDate day(Cell cell, String expected) {
    LocalDate day;
    try {
      day = LocalDate.parse(cell.raw().substring(0, DATE_LENGTH));
    } catch (DateTimeException notDay) {
      throw cell.refusal(
          cell.quoted() + " is no day of the calendar.", expected, "correct the date");
    }
    if (day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR) {
      throw cell.refusal(
          cell.quoted() + " lies outside the years 1900 to 2199.", expected, "correct the year");
    }
    return day;
  }

  private static boolean hasIsoShape(String text) {
    if (text.length() < DATE_LENGTH) {
      return false;
    }
    for (int i = 0; i < DATE_LENGTH; i++) {
      char character = text.charAt(i);
      boolean hyphen = i == 4 || i == 7;
      if (hyphen ? character != '-' : character < '0' || character > '9') {
        return false;
      }
    }
    return true;
  }

  private static InputRefusedException notIso(Cell cell, String expected) {
    boolean digits = cell.raw().chars().filter(c -> c >= '0' && c <= '9').count() >= 3;
    return cell.refusal(
        cell.quoted() + (digits ? " is not written year-month-day." : " is not a date."),
        expected,
        digits
            ? "write year, month, day in this order; which number is the day is not guessed"
            : "correct the cell");
  }
}
