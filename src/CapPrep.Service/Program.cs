using CapPrep.Service.Commands;

return await CommandLine.Run(args);
