library-in-the-setting = « { $name } » se donne désormais une seule fois, dans le réglage : passez { $example }.
library-no-setting = { $given } n’est pas un réglage : passez-en un comme { $example }.
library-one-tempo = Plusieurs airs ne peuvent pas partager un tempo de { $given } noires à la minute : retirez le tempo du réglage, et chaque air aura le sien.
library-no-workers = Impossible avec { $given } processus : donnez 1 ou plus.
library-other-tune = Ce qui a été joué n’est pas « { $title } » : la ressemblance est de { $likeness } %. Donnez l’air dont c’est une version.
library-tolerance = Des tolérances de { $onset } secondes et { $pitch } cents n’ont pas de sens : donnez 0 ou plus.
library-no-field = Les notes n’ont pas de champ « { $field } » : donnez un tableau avec onset_sec et pitch.
