package fettle.curve;

import fettle.refusal.InputRefusedException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A strict reader of JSON (RFC 8259): no comments, no trailing commas, no repeated names, no
 * numbers beyond double range; depth is limited. Objects become maps in file order, arrays lists,
 * numbers {@code Double}, strings {@code String}, and the three literals {@code Boolean} and null.
 */
final class JsonText {
  private static final int DEEPEST = 32;

  private final String text;
  private final String file;
  private int at;

  private JsonText(String text, String file) {
    this.text = text;
    this.file = file;
  }

  /** The one value that the bytes hold; refuses anything else with line and column. */
  static Object parse(byte[] bytes, String file) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException garbled) {
      throw new InputRefusedException(
          "The file is not UTF-8 text.", file, "a JSON file as it was written", CurveFile.FETCH);
    }
    JsonText reader = new JsonText(text, file);
    reader.skipBlanks();
    Object value = reader.value(0);
    reader.skipBlanks();
    if (reader.at < text.length()) {
      throw reader.garbled("the end of the file");
    }
    return value;
  }

  private Object value(int depth) {
    if (depth > DEEPEST) {
      throw garbled("at most " + DEEPEST + " levels of nesting");
    }
    return switch (peek()) {
      case '{' -> object(depth);
      case '[' -> array(depth);
      case '"' -> string();
      case 't' -> literal("true", Boolean.TRUE);
      case 'f' -> literal("false", Boolean.FALSE);
      case 'n' -> literal("null", null);
      default -> number();
    };
  }

  private Map<String, Object> object(int depth) {
    Map<String, Object> fields = new LinkedHashMap<>();
    at++;
    skipBlanks();
    if (peek() == '}') {
      at++;
      return fields;
    }
    while (true) {
      skipBlanks();
      if (peek() != '"') {
        throw garbled("a name in quotation marks");
      }
      int place = at;
      String name = string();
      if (fields.containsKey(name)) {
        at = place;
        throw garbled("each name once");
      }
      skipBlanks();
      expect(':');
      skipBlanks();
      fields.put(name, value(depth + 1));
      skipBlanks();
      if (peek() == '}') {
        at++;
        return fields;
      }
      expect(',');
    }
  }

  private List<Object> array(int depth) {
    List<Object> elements = new ArrayList<>();
    at++;
    skipBlanks();
    if (peek() == ']') {
      at++;
      return elements;
    }
    while (true) {
      skipBlanks();
      elements.add(value(depth + 1));
      skipBlanks();
      if (peek() == ']') {
        at++;
        return elements;
      }
      expect(',');
    }
  }

  private String string() {
    StringBuilder content = new StringBuilder();
    at++;
    while (true) {
      char character = peek();
      if (character < ' ') {
        throw garbled("no control character inside quotation marks");
      }
      at++;
      if (character == '"') {
        return content.toString();
      }
      content.append(character == '\\' ? escaped() : character);
    }
  }

  private char escaped() {
    char character = peek();
    at++;
    return switch (character) {
      case '"', '\\', '/' -> character;
      case 'b' -> '\b';
      case 'f' -> '\f';
      case 'n' -> '\n';
      case 'r' -> '\r';
      case 't' -> '\t';
      case 'u' -> unicode();
      default -> {
        at--;
        throw garbled("an escape of JSON");
      }
    };
  }

  private char unicode() {
    int code = 0;
    for (int i = 0; i < 4; i++) {
      int digit = Character.digit(peek(), 16);
      if (digit < 0 || peek() > 'f') {
        throw garbled("four hexadecimal digits");
      }
      code = code * 16 + digit;
      at++;
    }
    return (char) code;
  }

  private Object literal(String word, Object value) {
    for (int i = 0; i < word.length(); i++) {
      if (peek() != word.charAt(i)) {
        throw garbled("a JSON value");
      }
      at++;
    }
    return value;
  }

  private Double number() {
    int start = at;
    if (peek() == '-') {
      at++;
    }
    if (peek() == '0') {
      at++;
    } else {
      digits();
    }
    if (at < text.length() && text.charAt(at) == '.') {
      at++;
      digits();
    }
    if (at < text.length() && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
      at++;
      if (peek() == '+' || peek() == '-') {
        at++;
      }
      digits();
    }
    double value = Double.parseDouble(text.substring(start, at));
    if (Double.isInfinite(value)) {
      at = start;
      throw garbled("a number within the range of a double");
    }
    return value;
  }

  private void digits() {
    int start = at;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    if (at == start) {
      peek();
      throw garbled(start == 0 || !isInNumber(start) ? "a JSON value" : "a digit");
    }
  }

  private boolean isInNumber(int place) {
    return "0123456789.eE+-".indexOf(text.charAt(place - 1)) >= 0;
  }

  private void expect(char character) {
    if (peek() != character) {
      throw garbled("'" + character + "'");
    }
    at++;
  }

  private void skipBlanks() {
    while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
      at++;
    }
  }

  private char peek() {
    if (at >= text.length()) {
      throw new InputRefusedException(
          text.isBlank() ? "The file is empty." : "The file ends too early.",
          file + ", line " + line(),
          "a whole JSON file",
          CurveFile.FETCH);
    }
    return text.charAt(at);
  }

  private InputRefusedException garbled(String expected) {
    int column = at - text.lastIndexOf('\n', Math.max(0, at - 1));
    return new InputRefusedException(
        "The file is not well-formed JSON.",
        file + ", line " + line() + ", column " + column,
        expected,
        CurveFile.FETCH);
  }

  private long line() {
    return 1
        + text.substring(0, Math.min(at, text.length())).chars().filter(c -> c == '\n').count();
  }
}
