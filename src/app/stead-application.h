/* stead-application.h - the program with a window. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_APPLICATION (stead_application_get_type ())
G_DECLARE_FINAL_TYPE (SteadApplication, stead_application, STEAD, APPLICATION, GtkApplication)

/* Opens the window (and the file named in @argv, if any) and runs until it is closed. */
int stead_application_run (int    argc,
                           char **argv);

G_END_DECLS
