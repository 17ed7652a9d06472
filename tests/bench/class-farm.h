/* class-farm.h - a farm with a whole class, for what is done for each student. */
#pragma once

#include "store/stead-store.h"

#define CLASS_TODAY (stead_day_new (2026, 3, 3))

/**
 * class_farm_new:
 * @path: of a file that is not there yet
 * @entries: of hours, spread over the class
 * @pictures: spread over the class, each 1600 × 1200 dots
 *
 * The demo farm on %CLASS_TODAY, its flock tended by so many students besides its own.
 *
 * Returns: (transfer full): open; what fails ends the program
 */
SteadStore *class_farm_new (const char *path, int students, int entries, int pictures) G_GNUC_WARN_UNUSED_RESULT;

/* Removes the folder with the files in it. */
void class_farm_remove_folder (const char *path);
