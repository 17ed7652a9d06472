/* stead-commands-private.h - what the files of the commands share. */
#pragma once

#include "stead-options.h"

#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_STATUS_DONE 0
#define STEAD_STATUS_NOT_DONE 1
#define STEAD_STATUS_NOT_UNDERSTOOD 2

/* Says on standard error, in one line, why something was not done; STEAD_STATUS_NOT_DONE. */
int commands_complain (const char *message);

/* The same for what was asked for wrongly; STEAD_STATUS_NOT_UNDERSTOOD. */
int commands_misunderstood (const char *message);

/* A sentence of an answer, without its markup. */
void commands_print_markup (const char *markup);

/* Takes --today for today. */
SteadStore *commands_open_farm (const SteadOptions   *options,
                                const char           *path,
                                SteadStoreOpenFlags   flags,
                                GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/* --import */
int commands_import (const SteadOptions *options);

G_END_DECLS
