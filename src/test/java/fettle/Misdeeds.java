package fettle;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * Classes that break the rules of {@link ArchitectureRules} on purpose, and a few that come near
 * and do not. They are compiled while the test runs and are no part of the program.
 */
final class Misdeeds {
  private static final String SOURCES =
      """
      package fettle.stray; class OutsideThePicture {}
      package fettle.export; class CycleThere { fettle.report.CycleBack back; }
      package fettle.report; public class CycleBack { fettle.export.Target there; }
      package fettle.fit; public class LeansOnLibrary { org.ejml.simple.SimpleMatrix m; }
      package fettle.curve; class NeedsLibraryByAnother { fettle.fit.LeansOnLibrary model; }
      package fettle.report; class PrintsOut { void f() { System.out.println(1); } }
      package fettle.report; class PrintsTrace { void f(Exception e) { e.printStackTrace(); } }
      package fettle.fit; class EndsTheProgram { void f() { System.exit(1); } }
      package fettle.desk; class DeskPrints { void f() { System.err.println(1); } }
      package fettle.curve; class AsksTheDate { Object f() { return java.time.LocalDate.now(); } }
      package fettle.library; class AsksTheInstant { java.util.function.Supplier<?> f = java.time.Instant::now; }
      package fettle.library; class MakesAClock { Object f() { return java.time.Clock.systemUTC(); } }
      package fettle.demo; class CountsMillis { long f() { return System.currentTimeMillis(); } }
      package fettle.table; class MakesADate { Object f() { return new java.util.Date(); } }
      package fettle.table; class AsksTheEnvironment { Object f() { return System.getenv("HOME"); } }
      package fettle.uncertainty; class DrawsUnseeded { Object f() { return new java.util.Random(); } }
      package fettle.uncertainty; class SourceUnseeded { Object f() {
          return org.apache.commons.rng.simple.RandomSource.XO_SHI_RO_256_PP.create(); } }
      package fettle.report; class FormatsByHabit { String f() { return String.format("%f", 1.0); } }
      package fettle.cli; class PrintsByHabit { void f() { System.out.printf("%f", 1.0); } }
      package fettle.block; class LowersByHabit { String f(String s) { return s.toLowerCase(); } }
      package fettle.report; class WritesAFile { void f(java.nio.file.Path p) throws Exception {
          java.nio.file.Files.writeString(p, ""); } }
      package fettle.export; class OpensAStream { void f() throws Exception {
          new java.io.FileOutputStream("x").close(); } }
      package fettle.calibration; class PrintsToFile { void f() throws Exception {
          new java.io.PrintWriter("x").close(); } }
      package fettle.quantity; class OpensAFile { boolean f(java.nio.file.Path p) {
          return java.nio.file.Files.exists(p); } }
      package fettle.fit; class PlatformDigits { double f(double x) { return Math.exp(x); } }
      package javafx.scene; public class Stage {}
      package fettle.cli; class CommandWithWindow { javafx.scene.Stage stage; }
      package fettle.desk; class WindowWithOptions { picocli.CommandLine line; }
      package fettle.statistics; class NumbersInJson { com.fasterxml.jackson.databind.JsonNode n; }
      package fettle.calibration; public class ShowsMatrix {
          public java.util.List<org.ejml.simple.SimpleMatrix> f() { return null; } }
      package fettle.block; class OpenField { String name; }
      package fettle.block; class SharedVariable { private static int count; static int f() { return count++; } }
      package fettle.block; class SharedArray { static final double[] LIMITS = {1, 2}; }
      package fettle.block; class BlockHelper {}

      package fettle.statistics; class AllowedMathematics {
          private static final double[] TABLE = {1, 2};
          double f(double x) { return Math.sqrt(Math.abs(x)) + StrictMath.exp(x) + TABLE[0]; } }
      package fettle.calibration; class AllowedInside { private org.ejml.simple.SimpleMatrix m;
          private org.ejml.simple.SimpleMatrix f() { return m; } }
      package fettle.library; class AllowedKeeper {
          Object f(java.time.Clock clock) { return java.time.Instant.now(clock); }
          void g(java.nio.file.Path p) throws Exception { java.nio.file.Files.delete(p); } }
      package fettle.report; class AllowedWriter {
          void f(java.nio.file.Path p, java.io.OutputStream o) throws Exception {
            java.nio.file.Files.copy(p, o); new java.io.PrintStream(o).print(1); }
          String g() { return String.format(java.util.Locale.ROOT, "%f", 1.0); }
          Object h() { return new java.util.Random(1); } }
      package fettle.cli; class AllowedFace { void f() { System.out.println(System.nanoTime()); } }
      """;

  /** Wrong only together with another class, or by no fault of theirs. */
  private static final Set<String> BYSTANDERS =
      Set.of("Target", "Forbidden", "Stage", "LeansOnLibrary", "CycleThere");

  private static final Pattern DECLARED =
      Pattern.compile("^package ([\\w.]+);\\s*(?:public )?class (\\w+)", Pattern.MULTILINE);

  private Misdeeds() {}

  /** Names of the classes and fields that some rule must find. */
  static List<String> wrong() {
    List<String> wrong = new ArrayList<>();
    for (String name : sources().keySet()) {
      String simple = name.substring(name.lastIndexOf('.') + 1);
      if (!simple.startsWith("Allowed") && !BYSTANDERS.contains(simple)) {
        wrong.add(name);
      }
    }
    for (String name : PackagePicture.packages()) {
      unknownTo(name).forEach(other -> wrong.add("fettle." + name + ".Forbidden.to_" + other));
    }
    return wrong;
  }

  /**
   * All sources by class name. Each package has a {@code Target} to be known, a class that knows
   * the targets of all packages it may know, and one for those it must not know.
   */
  private static Map<String, String> sources() {
    Map<String, String> sources = new LinkedHashMap<>();
    for (String source : SOURCES.split("(?m)^(?=package )")) {
      Matcher declared = DECLARED.matcher(source);
      assertTrue(declared.find(), source);
      sources.put(declared.group(1) + "." + declared.group(2), source);
    }
    for (String name : PackagePicture.packages()) {
      String start = "fettle." + name + ".";
      String prefix = "package fettle." + name + "; ";
      sources.put(start + "Target", prefix + "public class Target {}");
      sources.put(
          start + "AllowedHere",
          prefix + "class AllowedHere {" + fields(PackagePicture.knownTo(name)) + "}");
      sources.put(
          start + "Forbidden", prefix + "class Forbidden {" + fields(unknownTo(name)) + "}");
    }
    return sources;
  }

  private static Set<String> unknownTo(String name) {
    Set<String> unknown = new TreeSet<>(PackagePicture.packages());
    unknown.removeAll(PackagePicture.knownTo(name));
    unknown.remove(name);
    return unknown;
  }

  private static String fields(Set<String> packages) {
    StringBuilder fields = new StringBuilder();
    packages.forEach(
        name ->
            fields
                .append(" private fettle.")
                .append(name)
                .append(".Target to_")
                .append(name)
                .append(';'));
    return fields.toString();
  }

  /**
   * Compiles all of them.
   *
   * @param directory where class files go
   * @return the same directory
   * @throws IOException if a source cannot be written
   */
  static Path compiledInto(Path directory) throws IOException {
    List<Path> files = new ArrayList<>();
    for (Map.Entry<String, String> source : sources().entrySet()) {
      Path file = directory.resolve("sources/" + source.getKey().replace('.', '/') + ".java");
      Files.createDirectories(file.getParent());
      files.add(Files.writeString(file, source.getValue()));
    }
    Path classes = Files.createDirectories(directory.resolve("classes"));
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter complaints = new StringWriter();
    try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
      List<String> options =
          List.of("-nowarn", "-proc:none", "-d", classes.toString(), "-cp", classPath());
      boolean compiled =
          compiler
              .getTask(
                  complaints,
                  manager,
                  null,
                  options,
                  null,
                  manager.getJavaFileObjectsFromPaths(files))
              .call();
      assertTrue(compiled, complaints::toString);
    }
    return classes;
  }

  private static String classPath() {
    return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
  }
}
