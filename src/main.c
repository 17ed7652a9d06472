/* main.c - does what the command line asks for, or opens the window. */
#include "config.h"

#include "app/stead-application.h"
#include "stead-commands.h"
#include "stead-home.h"

int
main (int    argc,
      char **argv)
{
  int status;

  stead_home_init ();
  if (stead_commands_run ((const char * const *) argv, &status))
    return status;
  return stead_application_run (argc, argv);
}
