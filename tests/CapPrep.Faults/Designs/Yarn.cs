namespace CapPrep.FaultCorpus.Designs;

/// <summary>A thread of the order.</summary>
/// <param name="Color"><c>#RRGGBB</c>.</param>

public sealed record Yarn(string Name, string Color)
{
    public int? WeightWt { get; init; }

    public string? Kind { get; init; }

    public bool Foam { get; init; }

    public static readonly Yarn Navy = new("Navy", "#1B2A5C");
    public static readonly Yarn White = new("White", "#F7F7F2");
    public static readonly Yarn Red = new("Red", "#B3202A");
    public static readonly Yarn Gold = new("Gold", "#C9972B");
    public static readonly Yarn Black = new("Black", "#1A1A1A");
    public static readonly Yarn Green = new("Green", "#1E6B3A");
    public static readonly Yarn Sky = new("Sky", "#5FA8D3");
    public static readonly Yarn Orange = new("Orange", "#E0701B");
    public static readonly Yarn Silver = new("Silver", "#B9BCC2");
    public static readonly Yarn Plum = new("Plum", "#6B2A5F");
    public static readonly Yarn Sand = new("Sand", "#D9C7A0");
    public static readonly Yarn Rose = new("Rose", "#E69AB0");

    /// <summary>Threads that nobody takes for one another.</summary>
    public static readonly IReadOnlyList<Yarn> All =
        [Navy, White, Red, Gold, Black, Green, Sky, Orange, Silver, Plum, Sand, Rose];
}
