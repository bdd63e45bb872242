using System.Text.Json;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Campaigns;

/// <summary>
/// A hot folder with some pairs, of which the last cannot be taken. Whoever fetches answers takes each away at once,
/// as a shop's own program would, so that one that is written twice is seen.
/// </summary>
internal sealed class KilledFolder(int pairs) : IDisposable
{
    private readonly Dictionary<string, int> _answers = [];
    private readonly HashSet<string> _jobs = [];
    private bool _isPut;

    public string Root { get; } = Directory.CreateTempSubdirectory("capprep-kill-hot-").FullName;

    /// <summary>Nothing lies there any more that is to be taken, answered or returned.</summary>
    public bool IsEmpty
    {
        get
        {
            Fetch();
            return Entries("drop").Length == 0 && Entries("taken").Length == 0 && Entries("answers").Length == 0
                && Entries("returned").Length > 0;
        }
    }

    public void Put()
    {
        if (_isPut)
            return;
        _isPut = true;
        for (var pair = 0; pair < pairs; pair++)
        {
            var quantity = pair == pairs - 1 ? 0 : 8;
            File.WriteAllBytes(Path.Combine(Root, "drop", $"cap{pair}.dst"), TapeBuilder.Crest().ToBytes("CREST"));
            File.WriteAllText(
                Path.Combine(Root, "drop", $"cap{pair}.json"),
                $$"""{"orderNumber":"HOT","line":"{{pair}}","capStyle":"six-panel-structured-mid","quantity":{{quantity}}}""");
        }
    }

    public IReadOnlyList<string> Faults()
    {
        var faults = new List<string>();
        for (var pair = 0; pair < pairs - 1; pair++)
        {
            if (_answers.GetValueOrDefault($"cap{pair}") is var times && times != 1)
                faults.Add($"cap{pair} was answered {times} times");
        }

        if (_answers.Count > pairs - 1 || _jobs.Count != pairs - 1)
            faults.Add($"{pairs - 1} pairs were answered under {_answers.Count} names from {_jobs.Count} jobs");
        if (Entries("returned").Length != 1)
            faults.Add($"one pair cannot be taken and {Entries("returned").Length} were returned");
        var kept = Entries("kept").Sum(day => Directory.GetDirectories(day).Length);
        if (kept != pairs - 1)
            faults.Add($"{kept} of {pairs - 1} pairs are kept");
        return faults;
    }

    public override string ToString() =>
        $"drop holds {Entries("drop").Length}, taken {Entries("taken").Length}, {_answers.Count} of {pairs - 1} pairs were answered";

    public void Dispose() => Directory.Delete(Root, recursive: true);

    private void Fetch()
    {
        foreach (var answer in Entries("answers").Where(path => !Path.GetFileName(path).StartsWith('.')))
        {
            using var body = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(answer, "answer.json")));
            var name = body.RootElement.GetProperty("drop").GetProperty("name").GetString()!;
            _answers[name] = _answers.GetValueOrDefault(name) + 1;
            _jobs.Add(body.RootElement.GetProperty("id").GetString()!);
            Directory.Delete(answer, recursive: true);
        }
    }

    private string[] Entries(string folder)
    {
        var path = Path.Combine(Root, folder);
        return Directory.Exists(path) ? Directory.GetFileSystemEntries(path) : [];
    }
}
