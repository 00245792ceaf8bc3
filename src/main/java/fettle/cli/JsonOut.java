package fettle.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes JSON documents: doubles with all their digits, absent and non-finite values as null. */
final class JsonOut {
  private static final JsonFactory FACTORY = new JsonFactory();

  private final JsonGenerator generator;

  private JsonOut(JsonGenerator generator) {
    this.generator = generator;
  }

  /** What is written inside a document, an object or an array. */
  interface Body {
    void write(JsonOut json) throws IOException;
  }

  /** One object as text without line ends. */
  static String object(Body body) {
    return document(
        json -> {
          json.generator.writeStartObject();
          body.write(json);
          json.generator.writeEndObject();
        });
  }

  /** One array as text without line ends. */
  static String array(Body body) {
    return document(
        json -> {
          json.generator.writeStartArray();
          body.write(json);
          json.generator.writeEndArray();
        });
  }

  private static String document(Body body) {
    StringWriter text = new StringWriter();
    try (JsonGenerator generator = FACTORY.createGenerator(text)) {
      body.write(new JsonOut(generator));
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }

  JsonOut put(String name, String value) throws IOException {
    generator.writeStringField(name, value);
    return this;
  }

  JsonOut put(String name, Optional<String> value) throws IOException {
    if (value.isPresent()) {
      generator.writeStringField(name, value.get());
    } else {
      generator.writeNullField(name);
    }
    return this;
  }

  JsonOut put(String name, boolean value) throws IOException {
    generator.writeBooleanField(name, value);
    return this;
  }

  JsonOut put(String name, long value) throws IOException {
    generator.writeNumberField(name, value);
    return this;
  }

  JsonOut put(String name, double value) throws IOException {
    generator.writeFieldName(name);
    return add(value);
  }

  JsonOut put(String name, OptionalDouble value) throws IOException {
    return put(name, value.orElse(Double.NaN));
  }

  JsonOut putNull(String name) throws IOException {
    generator.writeNullField(name);
    return this;
  }

  JsonOut putObject(String name, Body body) throws IOException {
    generator.writeFieldName(name);
    return addObject(body);
  }

  JsonOut putArray(String name, Body body) throws IOException {
    generator.writeFieldName(name);
    return addArray(body);
  }

  JsonOut add(double value) throws IOException {
    if (Double.isFinite(value)) {
      generator.writeNumber(value);
    } else {
      generator.writeNull();
    }
    return this;
  }

  JsonOut add(String value) throws IOException {
    generator.writeString(value);
    return this;
  }

  JsonOut addObject(Body body) throws IOException {
    generator.writeStartObject();
    body.write(this);
    generator.writeEndObject();
    return this;
  }

  JsonOut addArray(Body body) throws IOException {
    generator.writeStartArray();
    body.write(this);
    generator.writeEndArray();
    return this;
  }
}
