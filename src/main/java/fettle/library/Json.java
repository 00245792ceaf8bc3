package fettle.library;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.erdtman.jcs.JsonCanonicalizer;
import org.erdtman.jcs.NumberToJSON;

/** JSON as this folder keeps it: read strictly and within limits, written in one way only. */
final class Json {
  /** Greatest size of a JSON file here. */
  static final int LARGEST = 16 << 20;

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private static final ObjectMapper MAPPER =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(32)
                          .maxDocumentLength(LARGEST)
                          .maxNumberLength(100)
                          .maxNameLength(200)
                          .maxStringLength(100_000)
                          .build())
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .nodeFactory(NODES)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private Json() {}

  static ObjectNode object() {
    return NODES.objectNode();
  }

  static ArrayNode array() {
    return NODES.arrayNode();
  }

  /**
   * A number by its shortest digits (ECMAScript's, as RFC 8785 asks), which read back as the same
   * double. Zero has no sign in that form.
   */
  static JsonNode number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value " + value + ": finite expected");
    }
    try {
      return DecimalNode.valueOf(new BigDecimal(NumberToJSON.serializeNumber(value)));
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  static ArrayNode numbers(double[] values) {
    ArrayNode array = array();
    for (double value : values) {
      array.add(number(value));
    }
    return array;
  }

  /** The one object that the bytes hold; refuses anything else with line and column. */
  static ObjectNode parse(byte[] bytes, String file) {
    JsonNode node;
    try {
      node = MAPPER.readTree(bytes);
    } catch (StreamConstraintsException beyond) {
      throw refusal(
          "The file is deeper or larger than any file of this kind: "
              + beyond.getOriginalMessage()
              + ".",
          file,
          "at most 32 levels and 16 MiB",
          "check what this file is");
    } catch (JsonEOFException cut) {
      throw cutOff(file);
    } catch (JsonProcessingException malformed) {
      JsonLocation at = malformed.getLocation();
      throw refusal(
          "The file is not well-formed JSON.",
          at == null ? file : file + ", line " + at.getLineNr() + ", column " + at.getColumnNr(),
          "JSON with each name once and nothing after its end",
          "correct that place, or take the file anew from a backup");
    } catch (IOException garbled) {
      throw refusal(
          "The file is not UTF-8 text.",
          file,
          "a JSON file as it was written",
          "take the file anew from a backup");
    }
    if (node == null || node.isMissingNode()) {
      throw cutOff(file);
    }
    if (!(node instanceof ObjectNode object)) {
      throw refusal(
          "The file holds no JSON object.", file, "an object in braces", "check what this file is");
    }
    return object;
  }

  private static InputRefusedException cutOff(String file) {
    return refusal(
        "The file is empty or ends too early.",
        file,
        "a whole JSON file",
        "take the file anew from a backup");
  }

  private static InputRefusedException refusal(
      String what, String file, String expected, String action) {
    return new InputRefusedException(what, file, expected, action);
  }

  /** The canonical form of RFC 8785: the same value gives the same bytes everywhere. */
  static byte[] canonical(JsonNode node) {
    try {
      return new JsonCanonicalizer(MAPPER.writeValueAsString(node)).getEncodedUTF8();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** A form for people: two spaces a level, line feeds, names in the order given. */
  static byte[] readable(JsonNode node) {
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter(
            Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER));
    printer.indentObjectsWith(indenter);
    printer.indentArraysWith(indenter);
    try {
      return (MAPPER.writer(printer).writeValueAsString(node) + "\n")
          .getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** SHA-256 as 64 hexadecimal digits in lower case. */
  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException impossible) {
      // Every Java platform has SHA-256 (java.security.MessageDigest, class comment).
      throw new IllegalStateException(impossible);
    }
  }
}
