package fettle;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The rules that hold the picture, each with its reason. */
final class ArchitectureRules {
  private static final String[] NUMERIC =
      ours("quantity", "statistics", "fit", "uncertainty", "curve");
  private static final String[] REPRODUCIBLE = ours("statistics", "fit", "uncertainty", "curve");
  private static final String[] FACES = ours("cli", "desk");

  private ArchitectureRules() {}

  /** Every rule; {@link ArchitectureTest} shows for each that it can fail. */
  static List<ArchRule> all() {
    List<ArchRule> rules = new ArrayList<>();
    PackagePicture.packages().forEach(name -> rules.add(knowsOnlyWhatThePictureAllows(name)));
    rules.add(everyClassStandsInThePicture());
    rules.add(noCycles());
    rules.add(curveNeedsTheJdkAlone());
    rules.add(onlyTheCommandLinePrints());
    rules.add(clockAndSeedArePassedIn());
    rules.add(nothingDependsOnTheMachinesLocale());
    rules.add(onlyTheLibraryWritesFiles());
    rules.add(numericPackagesOpenNoFiles());
    rules.add(reproducibleBits());
    rules.add(windowToolkitOnlyInTheDesk());
    rules.add(commandLineParserOnlyInTheCommandLine());
    rules.add(noJsonInNumericPackages());
    rules.add(noMatrixLibraryInSignatures());
    rules.add(nothingIsChangedFromOutside());
    rules.add(noMutableStatics());
    rules.add(noSharedArrays());
    rules.add(namesSaySomething());
    return rules;
  }

  static ArchRule knowsOnlyWhatThePictureAllows(String name) {
    Set<String> known = PackagePicture.knownTo(name);
    String[] allowed = ours(Stream.concat(Stream.of(name), known.stream()).toArray(String[]::new));
    return classes()
        .that()
        .resideInAPackage(our(name))
        .should()
        .onlyDependOnClassesThat(resideOutsideOfPackage("fettle..").or(resideInAnyPackage(allowed)))
        .as(
            name
                + " knows "
                + (known.isEmpty() ? "nothing of ours" : "only " + String.join(", ", known)))
        .because("data move from left to right through the job and never back")
        .allowEmptyShould(true);
  }

  static ArchRule everyClassStandsInThePicture() {
    return classes()
        .that()
        .resideInAPackage("fettle..")
        .should()
        .resideInAnyPackage(ours(PackagePicture.packages().toArray(String[]::new)))
        .as("every class stands in a package of the picture")
        .because("a package nobody has drawn is one that may know everything");
  }

  static ArchRule noCycles() {
    return slices()
        .matching("fettle.(*)..")
        .should()
        .beFreeOfCycles()
        .as("packages form no cycle")
        .because("what cannot be taken out cannot be understood alone");
  }

  static ArchRule curveNeedsTheJdkAlone() {
    return classes()
        .that()
        .resideInAPackage(our("curve"))
        // The exact change of coefficients between units is in double-double; evaluation is not.
        .should(new NeedOnlyTheJdkAnd("org.apache.commons.numbers.core.DD"))
        .as("curve, and whatever of ours it leads to, needs the JDK and double-double alone")
        .because("a curve is taken out and evaluated elsewhere, without our libraries")
        .allowEmptyShould(true);
  }

  static ArchRule onlyTheCommandLinePrints() {
    DescribedPredicate<AccessTarget> console =
        Access.field(System.class, "out", "err", "in")
            .or(Access.method(System.class, "exit", "console", "setOut", "setErr", "setIn"))
            .or(Access.method(Runtime.class, "exit", "halt"))
            .or(Access.method(Throwable.class, "printStackTrace"));
    return noClasses()
        .that()
        .resideOutsideOfPackage(our("cli"))
        .should()
        .accessTargetWhere(target(console))
        .as("only cli uses the console or ends the program")
        .because("standard output carries one JSON document, and a window has no console")
        .allowEmptyShould(true);
  }

  static ArchRule clockAndSeedArePassedIn() {
    return noClasses()
        .that()
        .resideOutsideOfPackages(FACES)
        .should()
        .accessTargetWhere(target(Access.CLOCK.or(Access.ENVIRONMENT).or(Access.CHANCE)))
        .as("clock, environment and chance are read in cli and desk only")
        .because("the same inputs are to give the same bytes, so time and seed are inputs")
        .allowEmptyShould(true);
  }

  static ArchRule nothingDependsOnTheMachinesLocale() {
    return noClasses()
        .should()
        .accessTargetWhere(target(Access.DEFAULT_LOCALE))
        .as("no text is made by the locale of the machine")
        .because(
            "a decimal comma in a JSON file or a report is a wrong number; name the locale, "
                + "as in String.format(Locale.ROOT, …)");
  }

  static ArchRule onlyTheLibraryWritesFiles() {
    return noClasses()
        .that()
        .resideOutsideOfPackages(ours("library", "demo", "cli", "desk"))
        .should()
        .accessTargetWhere(target(Access.FILE_WRITING))
        .as(
            "only library (and demo, which fills one, and the faces, for files the user names) writes files")
        .because(
            "a crash may leave the old state or the new one, and one package answers for that; "
                + "export and report write to a stream they are given")
        .allowEmptyShould(true);
  }

  static ArchRule numericPackagesOpenNoFiles() {
    return noClasses()
        .that()
        .resideInAnyPackage(NUMERIC)
        .should()
        .dependOnClassesThat(
            resideInAPackage("java.nio.file..")
                .or(resideInAPackage("java.io").and(Access.simpleName("File.*|RandomAccessFile"))))
        .as("numeric packages open no files")
        .because("numbers in, numbers out")
        .allowEmptyShould(true);
  }

  static ArchRule reproducibleBits() {
    return noClasses()
        .that()
        .resideInAnyPackage(REPRODUCIBLE)
        .should()
        .accessTargetWhere(target(Access.PLATFORM_MATHEMATICS))
        .as("statistics, fit, uncertainty and curve take transcendental functions from StrictMath")
        .because("Math may differ in the last digit from one machine to the next; a curve may not")
        .allowEmptyShould(true);
  }

  static ArchRule windowToolkitOnlyInTheDesk() {
    return onlyIn("desk", "the window is one face of the program", "javafx..");
  }

  static ArchRule commandLineParserOnlyInTheCommandLine() {
    return onlyIn("cli", "the command line is one face of the program", "picocli..");
  }

  private static ArchRule onlyIn(String name, String reason, String... packages) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(our(name))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(packages)
        .as("only " + name + " knows " + String.join(", ", packages))
        .because(reason + "; what computes serves both faces")
        .allowEmptyShould(true);
  }

  static ArchRule noJsonInNumericPackages() {
    return noClasses()
        .that()
        .resideInAnyPackage(NUMERIC)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("com.fasterxml.jackson..", "com.networknt..", "io.github.erdtman..")
        .as("no JSON in numeric packages")
        .because("how a value is written is no part of what it is")
        .allowEmptyShould(true);
  }

  static ArchRule noMatrixLibraryInSignatures() {
    return classes()
        .that()
        .resideOutsideOfPackages(ours("statistics", "fit", "uncertainty"))
        .should(
            new ShowNoTypesOf(
                resideInAnyPackage("org.apache.commons.math3..", "org.ejml..")
                    .as("Commons Math or EJML")))
        .as("only statistics, fit and uncertainty show types of Commons Math or EJML")
        .because("a library can be replaced as long as its types stay where the mathematics is")
        .allowEmptyShould(true);
  }

  static ArchRule nothingIsChangedFromOutside() {
    return fields()
        .that()
        .areNotPrivate()
        .and()
        .doNotHaveModifier(JavaModifier.SYNTHETIC)
        .should()
        .beFinal()
        .as("fields are private or final")
        .because("values do not change once they are made")
        .allowEmptyShould(true);
  }

  static ArchRule noMutableStatics() {
    return fields()
        .that()
        .areStatic()
        .and()
        .doNotHaveModifier(JavaModifier.SYNTHETIC)
        .should()
        .beFinal()
        .as("static fields are final")
        .because("two jobs in one program must not meet in a variable")
        .allowEmptyShould(true);
  }

  static ArchRule noSharedArrays() {
    return fields()
        .that()
        .areNotPrivate()
        .and()
        .areStatic()
        .and()
        .doNotHaveModifier(JavaModifier.SYNTHETIC)
        .should()
        .notHaveRawType(DescribedPredicate.describe("an array", JavaClass::isArray))
        .as("no array is a constant for others")
        .because("a final array can still be written to")
        .allowEmptyShould(true);
  }

  static ArchRule namesSaySomething() {
    return noClasses()
        .should()
        .haveNameMatching(".*(Util|Utils|Helper|Manager|Data|Info|Impl|DTO|Dto)")
        .as("names say something")
        .because("a drawer of odds and ends hides the type that the method belongs to");
  }

  private static String our(String name) {
    return "fettle." + name + "..";
  }

  private static String[] ours(String... names) {
    return Stream.of(names).map(ArchitectureRules::our).toArray(String[]::new);
  }
}
