using System.Net;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs;

/// <summary>A page per problem code, which a problem's <c>type</c> leads to.</summary>
internal static class ProblemPages
{
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet("/docs/problems/{code}", Page)
            .WithName("getProblemPage").WithTags("Documentation").WithSummary("Explains one problem code.");

    private static IResult Page(string code) =>
        Problems.All.FirstOrDefault(problem => problem.Code == code) is { } problem
            ? TypedResults.Content(Html(problem), "text/html; charset=utf-8")
            : new Refusal(Problems.NotFound, "There is no problem of this code.");

    private static string Html(Problem problem) =>
        $"""
         <!doctype html>
         <html lang="en">
         <head><meta charset="utf-8"><title>{problem.Code}</title>
         <style>body{WebPage.Style}</style></head>
         <body>
         <h1>{problem.Code}</h1>
         <p>HTTP status {problem.Status}</p>
         <p>{WebUtility.HtmlEncode(problem.Title)}</p>
         <p>{WebUtility.HtmlEncode(problem.Help)}</p>
         </body>
         </html>
         """;

    private static class WebPage
    {
        public const string Style = "{font:1rem/1.5 sans-serif;max-width:40rem;margin:2rem auto;padding:0 1rem}";
    }
}
