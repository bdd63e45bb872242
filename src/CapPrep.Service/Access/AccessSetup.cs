namespace CapPrep.Service.Access;

internal static class AccessSetup
{
    public static IServiceCollection AddAccess(this IServiceCollection services) => services
        .AddScoped<KeyDesk>()
        .AddScoped<KeyBootstrap>()
        .AddScoped<AuditTrail>();

    public static void MapAccess(this IEndpointRouteBuilder routes) => KeyRoutes.Map(routes);

    /// <summary>The caller of a request whose route admits scopes.</summary>
    public static Caller Caller(this HttpContext context) => context.Features.Get<Caller>() ?? throw new InvalidOperationException("This route admits no scopes, so it has no caller.");
}
