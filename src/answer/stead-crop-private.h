/* stead-crop-private.h - what the parts of the crop answer share. */
#pragma once

#include "answer/stead-crop-answer.h"
#include "answer/stead-due-answer.h"

G_BEGIN_DECLS

/* The last day that counts: today, or the day the crop ended. */
SteadDay stead_crop_last_day (const SteadCropAnswer *self,
                              SteadDay               today);

/* Degree days so far, what they have to reach, and when they will. */
gboolean stead_crop_read_warmth (SteadStore       *store,
                                 SteadCropAnswer  *self,
                                 SteadDay          today,
                                 GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Readings from @from to @to of the crop's thermometer, a day each, NAN where there is none. */
SteadDayTemps *stead_crop_read_days (SteadStore       *store,
                                     const SteadCrop  *crop,
                                     SteadDay          from,
                                     SteadDay          to,
                                     GError          **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_crop_rule (const SteadCrop    *crop,
                      SteadDegreeDayRule *out);

/* Weeks of picking, so far and to come. */
gboolean stead_crop_read_picks (SteadStore       *store,
                                SteadCropAnswer  *self,
                                SteadDay          today,
                                GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* Fruit set, moisture and light of the last days; the feed of fish on the same water. */
gboolean stead_crop_read_air (SteadStore       *store,
                              SteadCropAnswer  *self,
                              SteadDay          today,
                              GError          **error) G_GNUC_WARN_UNUSED_RESULT;

char *stead_crop_sentence (const SteadCropAnswer *self,
                           SteadDay               today) G_GNUC_WARN_UNUSED_RESULT;
char *stead_crop_caution (const SteadCropAnswer *self,
                          SteadDay               today) G_GNUC_WARN_UNUSED_RESULT;

/* What the fish feed keeps, beside what stands; NULL for a crop without fish. */
char *stead_crop_feeding (const SteadCropAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* Degree days shown to the farm, without their unit: "512". */
char *stead_crop_warmth_number (double          sum_c,
                                SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

/* Adds to @dues (of SteadDue) what the crops under way ask for. */
gboolean stead_crop_find_dues (SteadStore  *store,
                               GPtrArray   *dues,
                               GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
