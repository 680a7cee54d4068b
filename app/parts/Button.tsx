import type { ButtonHTMLAttributes, ReactNode } from 'react';
import styles from './Button.module.css';
import { Icon, type IconName } from './Icon';

/** `primary` is the one thing to do here; `quiet` sits inside text and tables. */
type ButtonKind = 'plain' | 'primary' | 'quiet';

interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className'> {
  kind?: ButtonKind;
  icon?: IconName;
  children: ReactNode;
}

export function Button({ kind = 'plain', icon, children, type = 'button', ...rest }: ButtonProps) {
  return (
    <button {...rest} type={type} className={`${styles.button} ${styles[kind]}`}>
      {icon && <Icon name={icon} />}
      {children}
    </button>
  );
}

interface ButtonLinkProps {
  href: string;
  kind?: ButtonKind;
  icon?: IconName;
  /** Leaves what stands here as it is. */
  newWindow?: boolean;
  children: ReactNode;
}

/** Looks like a button and is a link, because it leads somewhere. */
export function ButtonLink({ href, kind = 'plain', icon, newWindow = false, children }: ButtonLinkProps) {
  return (
    <a
      href={href}
      {...(newWindow && { target: '_blank', rel: 'noopener' })}
      className={`${styles.button} ${styles[kind]}`}
    >
      {icon && <Icon name={icon} />}
      {children}
    </a>
  );
}
