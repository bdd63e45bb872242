using System.Globalization;

namespace CapPrep.Benchmarks.Orders;

/// <summary>The search for sew orders against published problems and against another solver.</summary>
internal static class OrderCommand
{
    private const string Usage = """
        orders lop FOLDER          linear ordering problems (files of LOLIB; BEST.txt may name values)
        orders sop FOLDER          sequential ordering problems (*.sop of TSPLIB and SOPLIB)
        orders peer --count 200    random small designs against OR-Tools
        """;

    /// <summary>0: the goals are met; 1: they are missed; 64: the command or a file cannot be read.</summary>
    internal static int Run(string[] args, TextWriter output, TextWriter error)
    {
        try
        {
            return args switch
            {
                ["lop", var folder] => PublishedRuns.LinearOrdering(folder, output),
                ["sop", var folder] => PublishedRuns.SequentialOrdering(folder, output),
                ["peer"] => PeerRun.Of(count: 200, output),
                ["peer", "--count", var text] when int.TryParse(text, CultureInfo.InvariantCulture, out var count) && count > 0 =>
                    PeerRun.Of(count, output),
                _ => throw new InvalidDataException("These are the commands:\n" + Usage),
            };
        }
        catch (Exception trouble) when (trouble is InvalidDataException or IOException)
        {
            error.WriteLine(trouble.Message);
            return 64;
        }
    }
}
