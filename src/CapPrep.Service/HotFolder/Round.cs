namespace CapPrep.Service.HotFolder;

/// <summary>What one round of a keeper met.</summary>
internal sealed class Round(DateTimeOffset at)
{
    private readonly List<string> _trouble = [];

    public DateTimeOffset At => at;

    /// <summary>When the drop folder was last looked at; null: never yet.</summary>
    public DateTimeOffset? LastScan { get; set; }

    public IReadOnlyList<WaitingFile> Waiting { get; set; } = [];

    /// <summary>What a person should know of, one sentence or two each.</summary>
    public IReadOnlyList<string> Trouble => _trouble;

    /// <summary>More settled than one round takes.</summary>
    public bool HasMore { get; set; }

    public void Note(string trouble)
    {
        if (!_trouble.Contains(trouble))
            _trouble.Add(trouble);
    }
}
