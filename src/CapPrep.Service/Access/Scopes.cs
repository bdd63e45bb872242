namespace CapPrep.Service.Access;

/// <summary>What a key may do. A route names the scopes that admit it; one of them is enough.</summary>
internal static class Scopes
{
    /// <summary>Ask what fits: for storefronts.</summary>
    public const string Fit = "fit";

    /// <summary>Send jobs and see the own shop's jobs.</summary>
    public const string Submit = "submit";

    /// <summary>See everything of the own shop but keys and endpoints.</summary>
    public const string Read = "read";

    /// <summary>What the floor needs: cards, tapes, measurements.</summary>
    public const string Floor = "floor";

    /// <summary>Decide on jobs; change the own shop's catalog, endpoints and keys; delete jobs.</summary>
    public const string Manage = "manage";

    /// <summary>Keys of any shop, nothing else.</summary>
    public const string Operate = "operate";

    public static readonly IReadOnlyList<string> All = [Fit, Floor, Manage, Operate, Read, Submit];
}

/// <summary>The scopes that admit a route.</summary>
internal sealed record AdmittedScopes(IReadOnlyList<string> Any);

internal static class ScopeExtensions
{
    /// <summary>Lets a key with any of these scopes use the route.</summary>
    public static TBuilder Admits<TBuilder>(this TBuilder route, params string[] any)
        where TBuilder : IEndpointConventionBuilder =>
        route.WithMetadata(new AdmittedScopes(any));
}

/// <summary>Who is calling: the key, without its secret part.</summary>
internal sealed record Caller(string KeyId, string KeyName, string Shop, IReadOnlyList<string> Scopes)
{
    public bool Has(string scope) => Scopes.Contains(scope, StringComparer.Ordinal);
}
