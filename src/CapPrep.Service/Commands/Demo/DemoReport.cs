using System.Globalization;
using System.Text;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Commands.Demo;

/// <summary>What the demo prints: plain lines of at most 100 columns.</summary>
internal static class DemoReport
{
    private const int Columns = 100;
    private const string Indent = "    ";
    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;

    public static string Opening(DemoService service, DemoFolders folders) =>
        $"""
         CapPrep looks at five cap designs of an invented rowing club, the Quayside Herons.

         service   {service.Address}
         files     {folders.Root}   (delete it when you are done)

         {Line("design", "door", "verdict", "hold", "warn", "note", "webhook")}
         """;

    /// <summary>One line of the table, and below it the most important finding.</summary>
    public static string Row(DemoAnswer answer) =>
        Line(
            answer.Order.Name,
            answer.Order.DoorWord,
            answer.Verdict,
            Count(answer, Severity.Hold),
            Count(answer, Severity.Warn),
            Count(answer, Severity.Note),
            Word(answer.Webhook))
        + Environment.NewLine + Wrapped(answer.Reason);

    /// <summary>Where the papers of each job lie, by door.</summary>
    public static string Papers(IEnumerable<DemoAnswer> answers)
    {
        var folders = answers.Select(answer => answer.Papers).OfType<string>().GroupBy(Path.GetDirectoryName);
        return string.Join(Environment.NewLine, folders.SelectMany(group => group
            .Select(folder => $"{Indent}{Path.GetFileName(folder) + "/",-32}{PapersIn(folder)}")
            .Prepend($"{Environment.NewLine}cards and proofs in {group.Key}")));
    }

    /// <summary>How an answer differs from what it must be; one sentence each.</summary>
    public static IEnumerable<string> Differences(DemoAnswer answer)
    {
        var who = $"{answer.Order.Name} by {answer.Order.DoorWord}";
        if (answer.Verdict != answer.Order.Wanted)
            yield return $"{who}: {answer.Order.Wanted} was expected, {answer.Verdict} came.";
        if (answer.Webhook is not (CallState.Verified or CallState.NotOwed))
            yield return $"{who}: its webhook is {Word(answer.Webhook)}.";
    }

    public static string Closing(IReadOnlyList<string> differences, int answers) => Environment.NewLine + (differences.Count == 0
        ? $"All {answers} answers are as expected, every webhook's signature is verified."
        : string.Join(Environment.NewLine, differences.Select(line => "NOT AS EXPECTED  " + line)));

    public static string Invitation(DemoService service, DemoShop shop) =>
        $"""

         The service stays up. In a second shell:

         KEY={shop.Key}
         curl -s {service.Address}v1/jobs -H "Authorization: Bearer $KEY"

         Ctrl+C stops it.
         """;

    private static string PapersIn(string folder) => string.Join("  ", Directory.GetFiles(folder)
        .Select(file => Path.GetFileName(file))
        .Where(name => Path.GetFileNameWithoutExtension(name) is "card" or "proof")
        .Order(StringComparer.Ordinal));

    private static string Line(string design, string door, string verdict, string hold, string warn, string note, string webhook) =>
        $"{design,-18}{door,-8}{verdict,-22}{hold,5}{warn,6}{note,6}   {webhook}".TrimEnd();

    private static string Count(DemoAnswer answer, Severity severity) =>
        answer.Findings.TryGetValue(severity, out var count) ? count.ToString(Invariant) : "-";

    private static string Word(CallState state) => state switch
    {
        CallState.NotOwed => "none owed",
        CallState.Verified => "received, signature verified",
        CallState.Forged => "received, signature WRONG",
        _ => "MISSING",
    };

    private static string Wrapped(string text)
    {
        var (lines, line) = (new StringBuilder(), Indent);
        foreach (var word in text.Split(' '))
        {
            if (line.Length + word.Length > Columns)
            {
                lines.AppendLine(line.TrimEnd());
                line = Indent;
            }

            line += word + " ";
        }

        return lines.Append(line.TrimEnd()).ToString();
    }
}
