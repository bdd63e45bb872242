using Microsoft.AspNetCore.HttpOverrides;
using Serilog;

namespace CapPrep.Service.Plumbing;

/// <summary>What every request passes, and the routes that belong to no slice.</summary>
internal static class PlumbingSetup
{
    public static IServiceCollection AddPlumbing(this IServiceCollection services) => services
        .AddScoped<Health>()
        .AddSingleton<TroubleGate>();

    public static void UsePlumbing(this WebApplication app)
    {
        var settings = app.Services.GetRequiredService<Settings>();
        if (settings.Http.TrustedProxies.Count > 0)
            app.UseForwardedHeaders(Forwarded(settings));
        app.UseSerilogRequestLogging();
        app.Use(SafeHeaders);
        app.UseMiddleware<TroubleGate>();
        app.Use(HeadAsGet);
        app.UseRouting();
    }

    public static void MapPlumbing(this IEndpointRouteBuilder routes)
    {
        Health.Map(routes);
    }

    private static ForwardedHeadersOptions Forwarded(Settings settings)
    {
        var options = new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto };
        options.KnownIPNetworks.Clear();
        options.KnownProxies.Clear();
        foreach (var network in settings.Http.TrustedProxies)
            options.KnownIPNetworks.Add(network);
        return options;
    }

    /// <summary>HEAD is answered as GET would be (RFC 9110, 9.3.2); the server leaves the body out.</summary>
    private static async Task HeadAsGet(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        if (!HttpMethods.IsHead(request.Method))
        {
            await next(context);
            return;
        }

        request.Method = HttpMethods.Get;
        try
        {
            await next(context);
        }
        finally
        {
            request.Method = HttpMethods.Head;
        }
    }

    private static Task SafeHeaders(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.XContentTypeOptions = "nosniff";
        headers.ContentSecurityPolicy = "default-src 'none'; style-src 'unsafe-inline'; sandbox";
        headers["Referrer-Policy"] = "no-referrer";
        return next(context);
    }
}
