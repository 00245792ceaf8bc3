package fettle.library;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.erdtman.jcs.JsonCanonicalizer;

/** JSON as it stands in the folder: canonical (RFC 8785), read strictly and within limits. */
final class Json {
  private static final int DEEPEST = 40;
  private static final int LONGEST_TEXT = 1 << 20;
  private static final ObjectMapper MAPPER =
      new ObjectMapper(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxStringLength(LONGEST_TEXT)
                          .build())
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private Json() {}

  static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  /**
   * Canonical bytes.
   *
   * @throws IllegalArgumentException for numbers that JSON cannot carry, which no value of ours is
   */
  static byte[] canonical(JsonNode node) {
    try {
      return new JsonCanonicalizer(MAPPER.writeValueAsString(node)).getEncodedUTF8();
    } catch (IOException failure) {
      throw new IllegalArgumentException("not canonical JSON: " + failure.getMessage(), failure);
    }
  }

  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException everyJdkHasIt) {
      throw new IllegalStateException(everyJdkHasIt);
    }
  }

  /**
   * Reads a file's object.
   *
   * @param bytes content
   * @param file name for messages
   * @throws InputRefusedException if it is not one whole JSON object
   */
  static ObjectNode read(byte[] bytes, String file) {
    try {
      JsonNode node = MAPPER.readTree(bytes);
      if (node instanceof ObjectNode object) {
        return object;
      }
    } catch (JsonProcessingException failure) {
      var at = failure.getLocation();
      throw new InputRefusedException(
          "The file is not whole JSON: " + failure.getOriginalMessage().split("\n")[0] + ".",
          file + (at == null ? "" : ", line " + at.getLineNr() + ", column " + at.getColumnNr()),
          "one JSON object, complete to its last brace",
          "restore the file from a backup; it may have been cut or edited");
    } catch (IOException failure) {
      throw new IllegalStateException(failure);
    }
    throw new InputRefusedException(
        bytes.length == 0 ? "The file is empty." : "The file holds no JSON object.",
        file,
        "one JSON object",
        "restore the file from a backup");
  }

  /**
   * Checks a file's format name and number, which come first of all.
   *
   * @throws InputRefusedException for another kind of file, or one from a newer program
   */
  static void requireFormat(ObjectNode object, String format, int newest, String file) {
    String found = object.path("format").asText("");
    if (!found.equals(format)) {
      throw new InputRefusedException(
          found.isEmpty()
              ? "The file does not say what it is."
              : "The file is of another kind: " + found + ".",
          file,
          "a file of format " + format,
          "put the right file in its place");
    }
    int number = object.path("formatVersion").asInt(0);
    if (number > newest) {
      throw new InputRefusedException(
          "The file was written by a newer program: format number " + number + ".",
          file,
          "format number " + newest + " or lower",
          "open it with the newer program");
    }
    if (number < 1) {
      throw new InputRefusedException(
          "The file's format number " + number + " never existed.",
          file,
          "format number 1" + (newest > 1 ? " to " + newest : ""),
          "restore the file from a backup");
    }
  }

  static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
