package fettle;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.AccessTarget.FieldAccessTarget;
import com.tngtech.archunit.core.domain.JavaClass;
import java.io.File;
import java.io.FileOutputStream;
import java.io.FileWriter;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.nio.channels.AsynchronousFileChannel;
import java.nio.channels.FileChannel;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.text.DateFormat;
import java.text.DecimalFormat;
import java.text.NumberFormat;
import java.text.SimpleDateFormat;
import java.time.Clock;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Calendar;
import java.util.Collections;
import java.util.Date;
import java.util.Formatter;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TimeZone;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import org.apache.commons.rng.simple.RandomSource;

/** What of the JDK and of libraries counts as printing, reading the clock, writing a file … */
final class Access {
  private static final String CONSTRUCTOR = "<init>";

  /** Ways to learn what time it is. {@code now(Clock)} is none: that clock was passed in. */
  static final DescribedPredicate<AccessTarget> CLOCK =
      DescribedPredicate.<AccessTarget>describe(
              "java.time now without a clock",
              target ->
                  target.getOwner().getPackageName().startsWith("java.time")
                      && target.getName().equals("now")
                      && parameters(target).stream().noneMatch(p -> p.isEquivalentTo(Clock.class)))
          .or(method(Clock.class, "system", "systemUTC", "systemDefaultZone"))
          .or(method(Clock.class, "tickMillis", "tickSeconds", "tickMinutes"))
          .or(method(System.class, "currentTimeMillis", "nanoTime"))
          .or(method(Calendar.class, "getInstance"))
          .or(withoutParameters(Date.class, CONSTRUCTOR))
          .or(withoutParameters(GregorianCalendar.class, CONSTRUCTOR));

  /** Ways to learn on which machine, and for whom, the program runs. */
  static final DescribedPredicate<AccessTarget> ENVIRONMENT =
      method(System.class, "getenv", "getProperty", "getProperties", "lineSeparator")
          .or(method(ZoneId.class, "systemDefault"))
          .or(method(TimeZone.class, "getDefault"))
          .or(method(Locale.class, "getDefault", "setDefault"))
          .or(method(Charset.class, "defaultCharset"));

  /** Ways to get a random number that no seed repeats. Keys are made with SecureRandom: allowed. */
  static final DescribedPredicate<AccessTarget> CHANCE =
      method(Math.class, "random")
          .or(method(StrictMath.class, "random"))
          .or(method(UUID.class, "randomUUID"))
          .or(method(ThreadLocalRandom.class, "current"))
          .or(withoutParameters(Random.class, CONSTRUCTOR))
          .or(withoutParameters(SplittableRandom.class, CONSTRUCTOR))
          .or(withoutParameters(RandomSource.class, "create"))
          .or(method(RandomSource.class, "createInt", "createLong"))
          .or(method(RandomSource.class, "createIntArray", "createLongArray"))
          .or(
              DescribedPredicate.<AccessTarget>describe(
                  "Collections.shuffle without a source",
                  target ->
                      is(target, Collections.class, "shuffle") && parameters(target).size() == 1));

  /** Formatting and changing of case that follow the locale of the machine. */
  static final DescribedPredicate<AccessTarget> DEFAULT_LOCALE =
      withoutLocale(String.class, "format", "formatted", "toLowerCase", "toUpperCase")
          .or(withoutLocale(Formatter.class, CONSTRUCTOR))
          .or(withoutLocale(PrintStream.class, "format", "printf"))
          .or(withoutLocale(PrintWriter.class, "format", "printf"))
          .or(withoutLocale(DateTimeFormatter.class, "ofPattern"))
          .or(withoutLocale(SimpleDateFormat.class, CONSTRUCTOR))
          .or(withoutLocale(DateFormat.class, "getInstance", "getDateInstance", "getTimeInstance"))
          .or(withoutLocale(NumberFormat.class, "getInstance", "getNumberInstance"))
          .or(withoutLocale(NumberFormat.class, "getPercentInstance", "getIntegerInstance"))
          .or(
              DescribedPredicate.<AccessTarget>describe(
                  "DecimalFormat without symbols",
                  target ->
                      is(target, DecimalFormat.class, CONSTRUCTOR)
                          && parameters(target).size() < 2));

  /** Ways to make, change or remove a file. Copying a file to a stream is reading. */
  static final DescribedPredicate<AccessTarget> FILE_WRITING =
      DescribedPredicate.<AccessTarget>describe(
              "writing by java.nio.file.Files",
              target ->
                  target.getOwner().isEquivalentTo(Files.class)
                      && (target
                              .getName()
                              .matches("write.*|create.*|delete.*|set.*|move|newByteChannel")
                          || target.getName().matches("newOutputStream|newBufferedWriter")
                          || target.getName().equals("copy")
                              && parameters(target).stream()
                                  .noneMatch(p -> p.isEquivalentTo(OutputStream.class))))
          .or(method(FileOutputStream.class, CONSTRUCTOR))
          .or(method(FileWriter.class, CONSTRUCTOR))
          .or(method(RandomAccessFile.class, CONSTRUCTOR))
          .or(method(FileChannel.class, "open"))
          .or(method(AsynchronousFileChannel.class, "open"))
          .or(method(File.class, "createNewFile", "createTempFile", "mkdir", "mkdirs"))
          .or(method(File.class, "delete", "deleteOnExit", "renameTo", "setLastModified"))
          .or(
              DescribedPredicate.<AccessTarget>describe(
                  "a printer on a file",
                  target ->
                      (is(target, PrintStream.class, CONSTRUCTOR)
                              || is(target, PrintWriter.class, CONSTRUCTOR))
                          && startsWith(target, Set.of("java.io.File", "java.lang.String"))))
          .or(
              DescribedPredicate.<AccessTarget>describe(
                  "JSON straight into a file",
                  target ->
                      target.getOwner().getPackageName().startsWith("com.fasterxml.jackson")
                          && target.getName().equals("writeValue")
                          && startsWith(target, Set.of("java.io.File"))));

  /** Functions whose last digit the platform may choose. */
  static final DescribedPredicate<AccessTarget> PLATFORM_MATHEMATICS =
      method(Math.class, "exp", "expm1", "log", "log10", "log1p", "pow", "cbrt", "hypot")
          .or(method(Math.class, "sin", "cos", "tan", "asin", "acos", "atan", "atan2"))
          .or(method(Math.class, "sinh", "cosh", "tanh"));

  private Access() {}

  static DescribedPredicate<AccessTarget> field(Class<?> owner, String... names) {
    return DescribedPredicate.describe(
        owner.getSimpleName() + " " + List.of(names),
        target ->
            target instanceof FieldAccessTarget
                && target.getOwner().isEquivalentTo(owner)
                && List.of(names).contains(target.getName()));
  }

  /** Also finds the method when it is called by the name of a subtype. */
  static DescribedPredicate<AccessTarget> method(Class<?> owner, String... names) {
    return DescribedPredicate.describe(
        owner.getSimpleName() + " " + List.of(names),
        target -> List.of(names).stream().anyMatch(name -> is(target, owner, name)));
  }

  static DescribedPredicate<JavaClass> simpleName(String pattern) {
    return DescribedPredicate.describe(
        "named " + pattern, type -> type.getSimpleName().matches(pattern));
  }

  private static DescribedPredicate<AccessTarget> withoutParameters(Class<?> owner, String name) {
    return DescribedPredicate.describe(
        owner.getSimpleName() + "." + name + "()",
        target -> is(target, owner, name) && parameters(target).isEmpty());
  }

  private static DescribedPredicate<AccessTarget> withoutLocale(Class<?> owner, String... names) {
    return method(owner, names)
        .and(
            DescribedPredicate.describe(
                "without a locale",
                target ->
                    parameters(target).stream().noneMatch(p -> p.isEquivalentTo(Locale.class))));
  }

  private static boolean is(AccessTarget target, Class<?> owner, String name) {
    return target instanceof CodeUnitAccessTarget
        && target.getName().equals(name)
        && (name.equals(CONSTRUCTOR)
            ? target.getOwner().isEquivalentTo(owner)
            : target.getOwner().isAssignableTo(owner));
  }

  private static List<JavaClass> parameters(AccessTarget target) {
    return target instanceof CodeUnitAccessTarget unit ? unit.getRawParameterTypes() : List.of();
  }

  private static boolean startsWith(AccessTarget target, Set<String> typeNames) {
    List<JavaClass> parameters = parameters(target);
    return !parameters.isEmpty() && typeNames.contains(parameters.get(0).getName());
  }
}
