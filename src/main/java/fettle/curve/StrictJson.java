package fettle.curve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A small strict JSON reader (RFC 8259), so that a curve file can be evaluated with the JDK alone.
 *
 * <p>Objects become maps, arrays lists, numbers doubles. Depth is limited; a duplicate key, a
 * trailing comma or anything after the document is an error. Errors are IllegalArgumentExceptions
 * with the offset.
 */
final class StrictJson {
  private static final int DEEPEST = 40;

  private final String text;
  private int at;

  private StrictJson(String text) {
    this.text = text;
  }

  static Object parse(String text) {
    StrictJson reader = new StrictJson(text);
    Object value = reader.value(0);
    reader.space();
    if (reader.at < text.length()) {
      throw reader.wrong("something follows the document");
    }
    return value;
  }

  private IllegalArgumentException wrong(String what) {
    return new IllegalArgumentException(what + " at character " + (at + 1));
  }

  private void space() {
    while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
      at++;
    }
  }

  private char peek() {
    if (at >= text.length()) {
      throw wrong("the document ends too early");
    }
    return text.charAt(at);
  }

  private void expect(char expected) {
    if (peek() != expected) {
      throw wrong("'" + expected + "' expected");
    }
    at++;
  }

  private Object value(int depth) {
    if (depth > DEEPEST) {
      throw wrong("nested too deeply");
    }
    space();
    return switch (peek()) {
      case '{' -> object(depth);
      case '[' -> array(depth);
      case '"' -> string();
      case 't' -> word("true", Boolean.TRUE);
      case 'f' -> word("false", Boolean.FALSE);
      case 'n' -> word("null", null);
      default -> number();
    };
  }

  private Object word(String word, Object value) {
    if (!text.startsWith(word, at)) {
      throw wrong("a value expected");
    }
    at += word.length();
    return value;
  }

  private Map<String, Object> object(int depth) {
    expect('{');
    Map<String, Object> map = new LinkedHashMap<>();
    space();
    if (peek() == '}') {
      at++;
      return map;
    }
    while (true) {
      space();
      String key = string();
      space();
      expect(':');
      if (map.containsKey(key)) {
        throw wrong("the key \"" + key + "\" stands twice");
      }
      map.put(key, value(depth + 1));
      space();
      if (peek() == '}') {
        at++;
        return map;
      }
      expect(',');
    }
  }

  private List<Object> array(int depth) {
    expect('[');
    List<Object> list = new ArrayList<>();
    space();
    if (peek() == ']') {
      at++;
      return list;
    }
    while (true) {
      list.add(value(depth + 1));
      space();
      if (peek() == ']') {
        at++;
        return list;
      }
      expect(',');
    }
  }

  private String string() {
    expect('"');
    StringBuilder result = new StringBuilder();
    while (true) {
      char c = peek();
      at++;
      if (c == '"') {
        return result.toString();
      }
      if (c < 0x20) {
        throw wrong("a control character in a text");
      }
      if (c != '\\') {
        result.append(c);
        continue;
      }
      char escape = peek();
      at++;
      switch (escape) {
        case '"', '\\', '/' -> result.append(escape);
        case 'b' -> result.append('\b');
        case 'f' -> result.append('\f');
        case 'n' -> result.append('\n');
        case 'r' -> result.append('\r');
        case 't' -> result.append('\t');
        case 'u' -> result.append(unicode());
        default -> throw wrong("an unknown escape in a text");
      }
    }
  }

  private char unicode() {
    if (at + 4 > text.length()) {
      throw wrong("the document ends too early");
    }
    String digits = text.substring(at, at + 4);
    if (!digits.chars().allMatch(c -> Character.digit(c, 16) >= 0 && c < 128)) {
      throw wrong("four hexadecimal digits expected");
    }
    at += 4;
    return (char) Integer.parseInt(digits, 16);
  }

  private Double number() {
    int from = at;
    if (peek() == '-') {
      at++;
    }
    int whole = digits();
    if (whole > 1 && text.charAt(at - whole) == '0') {
      throw wrong("a number begins with 0");
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
    double value = Double.parseDouble(text.substring(from, at));
    if (Double.isInfinite(value)) {
      throw wrong("a number too large");
    }
    return value;
  }

  private int digits() {
    int from = at;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    if (at == from) {
      throw wrong(at >= text.length() ? "the document ends too early" : "a value expected");
    }
    return at - from;
  }
}
