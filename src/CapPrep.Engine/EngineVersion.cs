namespace CapPrep.Engine;

/// <summary>The version that every result names; it rises with any change of a result, a sheet or a written tape.</summary>
public static class EngineVersion
{
    public const string Current = "0.4.0";
}
