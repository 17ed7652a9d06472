/* main.c - starts the window. */
#include "config.h"

#include "app/stead-application.h"
#include "stead-home.h"

int
main (int    argc,
      char **argv)
{
  stead_home_init ();
  return stead_application_run (argc, argv);
}
